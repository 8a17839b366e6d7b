package withers.ingest.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.yaml.Fields;
import withers.yaml.Problems;
import withers.yaml.YamlMap;

/** Reads which files are joined to an export. */
record JoinsReader(Problems problems) {

  private static final String NAME = "[a-z][a-z0-9-]*";

  List<Join> read(Fields profile) {
    List<Join> joins = new ArrayList<>();
    profile
        .node("joins")
        .ifPresent(
            node -> {
              if (node instanceof YamlMap map) {
                map.entries().forEach(entry -> read(entry).ifPresent(joins::add));
              } else {
                profile.problem(
                    "joins",
                    "Expected names of joined files, each with its key, but found none",
                    "write joins: {animal: {files: animals-*.csv, key: Animal ID, on: Animal}}");
              }
            });
    return joins;
  }

  private Optional<Join> read(YamlMap.Entry entry) {
    String name = entry.key().text();
    if (!name.matches(NAME)) {
      problems.add(
          entry.key().place(),
          name,
          "Expected a name of small letters, digits and dashes, but found \"%s\"".formatted(name),
          "columns are then called name.Header");
      return Optional.empty();
    }
    if (!(entry.value() instanceof YamlMap map)) {
      problems.add(
          entry.key().place(),
          name,
          "Expected files, key and on of a joined file, but found none",
          "");
      return Optional.empty();
    }
    return Fields.read(map, problems, fields -> join(name, fields));
  }

  private static Join join(String name, Fields fields) {
    Join join =
        new Join(
            name,
            fields.list("files", ProfileReader::pattern),
            fields.optionalText("sheet"),
            fields.text("key"),
            fields.text("on"),
            fields.choice("missing", Join.Missing.REJECT));
    if (join.files().isEmpty() && join.sheet().isEmpty()) {
      fields.require("files");
    }
    return join;
  }

  /** Notes joins that nothing uses, that use one another in a circle, or whose date is unknown. */
  void check(Fields profile, SourceProfile read) {
    for (int i = 0; i < read.joins().size(); i++) {
      Join join = read.joins().get(i);
      requireUse(profile, read, join);
      requireOrder(profile, read.joins(), i);
      requireDate(profile, read, join);
      requireOwnFiles(profile, read, join);
    }
  }

  private static void requireUse(Fields profile, SourceProfile read, Join join) {
    if (read.headers().stream().noneMatch(join::owns)
        && read.joins().stream().noneMatch(other -> join.owns(other.on()))) {
      profile.problem(
          "joins",
          "Expected a column \"%s.HEADER\" for each join, but found none".formatted(join.name()),
          "name one under columns, or take the join out");
    }
  }

  private static void requireOrder(Fields profile, List<Join> joins, int place) {
    String on = joins.get(place).on();
    joins.stream()
        .skip(place)
        .filter(later -> later.owns(on))
        .findFirst()
        .ifPresent(
            later ->
                profile.problem(
                    "joins",
                    "Expected join \"%s\" before the one that refers to it, but found it after"
                        .formatted(later.name()),
                    "write it first"));
  }

  private static void requireDate(Fields profile, SourceProfile read, Join join) {
    if (!join.isInTheSameFile() && read.exportDate().from() == ExportDateRule.From.COLUMN) {
      profile.problem(
          "joins",
          "Expected an export date that joined files tell, too, but found \"from: column\"",
          "use from: file-name or from: command");
    }
  }

  private static void requireOwnFiles(Fields profile, SourceProfile read, Join join) {
    if (join.files().stream().anyMatch(read.files()::contains)) {
      profile.problem(
          "joins",
          "Expected other files for join \"%s\" than for the export, but found the same"
              .formatted(join.name()),
          "for sheets of one spreadsheet, leave out its files and name its sheet");
    }
  }
}
