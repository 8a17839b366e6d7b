package withers.ingest.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import withers.cli.Console;
import withers.ingest.Inspected;
import withers.ingest.inspect.FirstRow;
import withers.ingest.inspect.Proposal;
import withers.ingest.inspect.Question;
import withers.ingest.inspect.Trial;

/** Tells people what was found out about a file. */
record InspectText(Console console) {

  void tell(Inspected found) {
    Proposal proposal = found.draft().proposal();
    console.print(
        say(
            "%s: %s (%d %%), %,d rows",
            proposal.file(), proposal.layout(), proposal.kindCertainty().percent(), found.rows()));
    if (!proposal.isWhole()) {
      console.print(say("  The proposal rests on the first %,d of them.", proposal.rows()));
    }
    found.draft().writing().reasons().forEach(reason -> console.print("  " + reason));
    console.print("  days " + proposal.date().pattern() + ": " + proposal.date().reason());
    console.print(
        "  key " + String.join(" + ", proposal.key().headers()) + ": " + proposal.key().reason());
    proposal
        .exportDate()
        .ifPresent(date -> console.print("  date of the export: " + date.reason()));
    columns(proposal);
    rows(found);
    questions(found.questions());
  }

  private void columns(Proposal proposal) {
    console.print("  Columns:");
    for (Proposal.Recognised field : proposal.fields()) {
      console.print(
          say(
              "    %-28s %-28s %2d %%  %s",
              field.path(),
              '"' + field.header() + '"',
              field.certainty().percent(),
              field.reason()));
    }
    for (String header : proposal.passedOver()) {
      console.print(say("    %-28s %-28s", "(passed over)", '"' + header + '"'));
    }
  }

  private void rows(Inspected found) {
    for (FirstRow row : found.first()) {
      console.print(say("  As line %d would be read:", row.line()));
      console.print(
          row.cells().stream()
              .map(cell -> "    " + cell.path() + ": " + cell.text())
              .collect(Collectors.joining(System.lineSeparator())));
    }
    if (!found.isTried()) {
      console.print("  The rows could not be tried: a column is missing, or there twice.");
    }
    for (Trial.Unread row : found.unread()) {
      console.print(
          say(
              "  Line %d can't be read (%s%s): %s",
              row.line(),
              row.code(),
              row.column().isEmpty() ? "" : ", \"" + row.column() + '"',
              row.reason()));
    }
  }

  private void questions(List<Question> questions) {
    if (!questions.isEmpty()) {
      console.print(say("  %d open %s:", questions.size(), word(questions)));
    }
    for (Question question : questions) {
      console.print("    " + question.about() + ": " + question.text());
      question.choices().forEach(choice -> console.print("      - " + choice));
    }
  }

  private static String word(List<Question> questions) {
    return questions.size() == 1 ? "question" : "questions";
  }

  private static String say(String text, Object... values) {
    return String.format(Locale.ROOT, text, values);
  }
}
