package withers.ingest.inspect;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import withers.ingest.profile.ColumnName;
import withers.ingest.sniff.Quoting;
import withers.source.SourceKind;
import withers.yaml.Choices;

/** Writes a draft as YAML, with the reason for each line behind it. */
final class DraftText {

  private static final String HEAD =
      """
      # What stands behind a line is the reason for it. Look everything through, answer the open
      # questions at the end, and take each out when it is answered.
      """;

  private static final String EXTENT =
      """
      # extent: full      # an export holds everything that the source has
      # extent: changes   # an export holds what changed since the last one
      # extent: window    # an export holds what is dated from one day to another
      # window: {by: visit, bounds: file-name}   # only with extent: window
      """;

  private static final String COVERAGE =
      """
      # coverage: {reach: whole}     # it can speak for all records of the organisation
      # coverage: {reach: account}   # it can speak for one account's slice of them
      """;

  private final Draft draft;
  private final Proposal proposal;
  private final StringBuilder yaml = new StringBuilder();

  DraftText(Draft draft) {
    this.draft = draft;
    this.proposal = draft.proposal();
  }

  String write() {
    line("# Proposed from " + oneLine(proposal.file()) + ": " + proposal.layout() + ".");
    yaml.append(HEAD);
    Optional<String> organisation = draft.answers().to("organisation");
    line(
        organisation
            .map(id -> "organisation: " + quoted(id))
            .orElse("# organisation:   # an id in organisations.yaml"));
    String kind = Choices.name(proposal.kind());
    line("kind: " + kind + "  # " + proposal.kindCertainty().percent() + " %");
    line("files: " + quoted(draft.filePattern()));
    format(draft.writing());
    line("export-date: " + proposal.exportDate().map(DraftText::rule).orElse("{from: command}"));
    coverage();
    key();
    new DraftColumns(proposal, this::line).write();
    values();
    questions();
    return yaml.toString();
  }

  private void line(String line) {
    yaml.append(line).append('\n');
  }

  private void format(Writing writing) {
    line("format:");
    writing.text().delimiter().ifPresent(one -> line("  delimiter: " + Choices.name(one)));
    writing
        .text()
        .quoting()
        .filter(one -> one != Quoting.DOUBLE)
        .ifPresent(one -> line("  quote: " + Choices.name(one)));
    writing.text().charset().ifPresent(one -> line("  charset: " + one.name()));
    writing.format().sheet().ifPresent(one -> line("  sheet: " + quoted(one)));
    line("  date: " + quoted(proposal.date().pattern()) + "  # " + proposal.date().reason());
  }

  private static String rule(Proposal.ExportDate date) {
    String place =
        date.column()
            .map(column -> "{from: column, column: " + quoted(column) + "}")
            .orElse("{from: file-name, pattern: " + date.pattern().orElse("") + "}");
    return place + "  # " + date.reason();
  }

  private void coverage() {
    Answers answers = draft.answers();
    yaml.append('\n');
    yaml.append(answers.to("extent").map(answer -> "extent: " + answer + "\n").orElse(EXTENT));
    yaml.append(
        answers
            .to("coverage")
            .map(answer -> "coverage: {reach: " + answer + "}\n")
            .orElse(COVERAGE));
    yaml.append('\n');
  }

  private void key() {
    List<String> headers = proposal.key().headers().stream().map(DraftText::quoted).toList();
    line("key: [" + String.join(", ", headers) + "]  # " + proposal.key().reason());
    Optional<Proposal.Recognised> animal = proposal.field("animal-id");
    animal.ifPresent(
        field -> line("animal-id: " + quoted(field.header()) + DraftColumns.reason(field)));
    if (animal.isEmpty() && proposal.kind() == SourceKind.CLINIC_PATIENTS && headers.size() == 1) {
      line("# animal-id: " + headers.get(0) + "  # if it stays with the animal: a row without a");
      line("#   chip number then waits for one instead of being rejected");
    }
    boolean species = proposal.field(ColumnName.SPECIES.word()).isPresent();
    if (!species && proposal.kind() != SourceKind.CHIP_SUPPLY) {
      line("# fixed: {species: cat}  # if all are of one kind; no column tells");
    }
  }

  private void values() {
    List<Map.Entry<ColumnName, Map<String, String>>> columns =
        proposal.values().entrySet().stream()
            .filter(entry -> !entry.getValue().isEmpty())
            .sorted(Map.Entry.comparingByKey())
            .toList();
    if (!columns.isEmpty()) {
      line("\nvalues:");
    }
    for (Map.Entry<ColumnName, Map<String, String>> column : columns) {
      line("  " + column.getKey().word() + ":");
      column
          .getValue()
          .forEach((theirs, ours) -> line("    " + quoted(theirs) + ": " + quoted(ours)));
    }
  }

  private void questions() {
    List<Question> questions = draft.questions();
    if (!questions.isEmpty()) {
      line("\nopen-questions:");
    }
    for (Question question : questions) {
      String choices =
          question.choices().isEmpty() ? "" : " [" + String.join("; ", question.choices()) + "]";
      line("  - " + quoted(question.about() + ": " + question.text() + choices));
    }
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }

  /** A text in double quotes, as YAML and JSON have them. */
  static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else if (Character.isISOControl(c) || c == '\u2028' || c == '\u2029' || c == '\uFEFF') {
        quoted.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
      } else {
        quoted.append(c);
      }
    }
    return quoted.append('"').toString();
  }
}
