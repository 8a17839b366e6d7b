package withers.ingest.profile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.yaml.Fields;
import withers.yaml.Place;
import withers.yaml.Problems;
import withers.yaml.YamlMap;

/** Reads which files are joined to an export. */
final class JoinsReader {

  private static final String NAME = "[a-z][a-z0-9-]*";

  private final Problems problems;
  private final Map<Join, Place> places = new HashMap<>();

  JoinsReader(Problems problems) {
    this.problems = problems;
  }

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
    Optional<Join> join = Fields.read(map, problems, fields -> join(name, fields));
    join.ifPresent(read -> places.put(read, entry.key().place()));
    return join;
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

  /** Notes joins that nothing uses, that use later ones, or whose files or date are not theirs. */
  void check(SourceProfile profile) {
    for (int i = 0; i < profile.joins().size(); i++) {
      Join join = profile.joins().get(i);
      requireUse(profile, join);
      requireOrder(profile.joins().subList(i, profile.joins().size()), join);
      requireDate(profile, join);
      requireOwnFiles(profile, join);
    }
  }

  private void requireUse(SourceProfile profile, Join join) {
    if (profile.headers().stream().noneMatch(join::owns)
        && profile.joins().stream().noneMatch(other -> join.owns(other.on()))) {
      problem(
          join,
          "Expected a column \"%s.HEADER\" somewhere, but found none".formatted(join.name()),
          "name one under columns, or take the join out");
    }
  }

  private void requireOrder(List<Join> fromHere, Join join) {
    fromHere.stream()
        .filter(later -> later.owns(join.on()))
        .findFirst()
        .ifPresent(
            later ->
                problem(
                    join,
                    "Expected \"%s\" before what refers to it, but found it after"
                        .formatted(later.name()),
                    "write it first"));
  }

  private void requireDate(SourceProfile profile, Join join) {
    if (!join.isInTheSameFile() && profile.exportDate().from() == ExportDateRule.From.COLUMN) {
      problem(
          join,
          "Expected an export date that joined files tell, too, but found \"from: column\"",
          "use from: file-name or from: command");
    }
  }

  private void requireOwnFiles(SourceProfile profile, Join join) {
    if (join.files().stream().anyMatch(profile.files()::contains)) {
      problem(
          join,
          "Expected other files than those of the export, but found the same",
          "for sheets of one spreadsheet, leave out files and name the sheet");
    }
  }

  private void problem(Join join, String message, String advice) {
    problems.add(Optional.ofNullable(places.get(join)).orElseThrow(), join.name(), message, advice);
  }
}
