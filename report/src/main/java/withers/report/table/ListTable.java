package withers.report.table;

import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.report.list.BandSection;
import withers.report.list.Callee;
import withers.report.list.Cautions;
import withers.report.list.Comparing;
import withers.report.list.FollowUp;
import withers.report.list.FollowUpList;
import withers.report.list.Question;
import withers.report.list.Task;
import withers.report.text.Texts;
import withers.text.HarmlessText;

/**
 * A list as a table: a row for each follow-up and, below them, each question, a cell for each
 * {@link Column}. Several things in one cell stand on lines of their own; what the reader is to
 * fill in is empty. Every cell is {@linkplain HarmlessText harmless}.
 */
public final class ListTable {
  private final FollowUpList list;
  private final Texts texts;

  private ListTable(FollowUpList list, Texts texts) {
    this.list = list;
    this.texts = texts;
  }

  /** The headings, one for each column. */
  public static List<String> headings(Texts texts) {
    return Stream.of(Column.values()).map(column -> column.heading(texts)).toList();
  }

  /** The rows in the list's order, each made when it is asked for. */
  public static Stream<List<String>> rows(FollowUpList list, Texts texts) {
    ListTable table = new ListTable(list, texts);
    return Stream.concat(
        list.bands().stream().flatMap(table::rows), list.questions().stream().map(table::row));
  }

  private Stream<List<String>> rows(BandSection section) {
    String when = texts.say("band." + section.band().word());
    return section.tasks().stream()
        .flatMap(task -> task.followUps().stream().map(one -> row(when, task, one)));
  }

  private List<String> row(String when, Task task, FollowUp followUp) {
    return row(column -> cell(column, when, task, followUp));
  }

  private List<String> row(Question question) {
    return row(column -> cell(column, question));
  }

  private static List<String> row(Function<Column, String> cell) {
    return Stream.of(Column.values()).map(cell).map(HarmlessText::of).toList();
  }

  private String cell(Column column, Question question) {
    return switch (column) {
      case REFERENCE -> question.reference();
      case WHEN -> texts.say("question.title");
      case ANIMAL -> question.animal();
      case CHIPS -> lines(question.chips().stream().map(ChipNumber::display));
      case RECORD -> question.record();
      case TASK -> texts.say("question.task");
      case WRONG -> question.about();
      case DO -> texts.say("question.do");
      case CAUTIONS -> texts.say("question.caution");
      case EVIDENCE -> lines(question.comparisons().stream().map(Comparing::inOneLine));
      case MARK, CALL, PHONE, EMAIL, ADDRESS -> "";
      case SO_FAR, OUTCOME, ON, BY, AGAIN, CHANNEL, NOTE, LIST -> "";
    };
  }

  private String cell(Column column, String when, Task task, FollowUp followUp) {
    return switch (column) {
      case REFERENCE -> followUp.reference();
      case WHEN -> when;
      case MARK -> texts.say("mark." + followUp.mark().word());
      case ANIMAL -> followUp.animal();
      case CHIPS -> lines(numbers(followUp));
      case RECORD -> followUp.record().orElse("");
      case TASK -> texts.say("task." + task.kind().word());
      case WRONG -> followUp.wrong();
      case SO_FAR -> lines(followUp.soFar().stream());
      case CALL -> lines(followUp.calls().stream().map(this::named));
      case PHONE -> first(followUp, Callee::phones);
      case EMAIL -> first(followUp, Callee::emails);
      case ADDRESS -> first(followUp, callee -> List.of(callee.address()));
      case DO -> numbered(task.isDoneOnce() ? task.steps() : followUp.steps());
      case OUTCOME, ON, BY, AGAIN, CHANNEL, NOTE -> "";
      case LIST -> list.organisation().id() + " " + list.run();
      case EVIDENCE -> lines(evidence(followUp));
      case CAUTIONS -> lines(cautions(task, followUp));
    };
  }

  private static Stream<String> evidence(FollowUp followUp) {
    return Stream.concat(
        followUp.evidence().stream(), followUp.comparisons().stream().map(Comparing::inOneLine));
  }

  /** The number as it is written in the record first: that is what the reader looks for. */
  private static Stream<String> numbers(FollowUp followUp) {
    return Stream.concat(
        followUp.written().stream(), followUp.chips().stream().map(ChipNumber::display));
  }

  private String named(Callee callee) {
    return callee.name() + " (" + callee.why() + ")";
  }

  /** Details of the one to call first: the others' would stand beside the wrong name. */
  private static String first(FollowUp followUp, Function<Callee, List<String>> details) {
    return lines(
        followUp.calls().stream().limit(1).flatMap(callee -> details.apply(callee).stream()));
  }

  private static String numbered(List<String> steps) {
    return lines(
        IntStream.range(0, steps.size()).mapToObj(i -> "%d. %s".formatted(i + 1, steps.get(i))));
  }

  private Stream<String> cautions(Task task, FollowUp followUp) {
    Stream<String> special = Stream.concat(followUp.cautions().stream(), Stream.of(task.caution()));
    return Stream.concat(special, Cautions.general(texts).stream());
  }

  private static String lines(Stream<String> texts) {
    return String.join("\n", texts.filter(text -> !text.isEmpty()).toList());
  }
}
