package withers.report.mail;

import java.util.List;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.report.list.BandSection;
import withers.report.list.Callee;
import withers.report.list.Cautions;
import withers.report.list.Changed;
import withers.report.list.Comparing;
import withers.report.list.FollowUp;
import withers.report.list.FollowUpList;
import withers.report.list.Question;
import withers.report.list.Task;
import withers.report.text.Texts;

/** A list as plain text, for readers and mail programs that show nothing else. */
final class PlainList {
  private final Texts texts;
  private final StringBuilder text = new StringBuilder();

  private PlainList(Texts texts) {
    this.texts = texts;
  }

  static String of(FollowUpList list, Texts texts) {
    PlainList plain = new PlainList(texts);
    plain.head(list);
    list.bands().forEach(plain::band);
    plain.resting(list);
    plain.questions(list);
    plain.line("-- ").line(texts.say("list.footer", list.run()));
    return plain.text.toString();
  }

  private void head(FollowUpList list) {
    String name = list.organisation().name();
    line(texts.say("list.title", name));
    line(texts.say("list.as-of", texts.date(list.asOf()))).line("");
    line(texts.say("list.total", list.size()) + ". " + Changed.in(list, texts));
    if (list.settledByPeople() > 0) {
      line(texts.say("list.settled-by-people", list.settledByPeople()));
    }
    if (list.waiting() > 0) {
      line(texts.say("list.waiting", list.waiting()));
    }
    list.backlog().ifPresent(this::backlog);
    line("").line(texts.say("list.confidential", name)).line("");
    Cautions.general(texts).forEach(caution -> line("* " + caution));
    line(texts.say("mail.sheet")).line(texts.say("mail.answer")).line("");
  }

  private void backlog(FollowUpList.Beginning backlog) {
    if (backlog.waiting() > 0) {
      line(texts.say("list.backlog", backlog.followUps(), texts.date(backlog.since())));
      line(texts.say("list.backlog.waiting", backlog.waiting()));
    }
  }

  private void band(BandSection section) {
    String word = section.band().word();
    String heading = texts.say("band." + word);
    line(heading).line("=".repeat(heading.length())).line(texts.say("band." + word + ".about"));
    line("");
    section.tasks().forEach(this::task);
  }

  private void resting(FollowUpList list) {
    if (!list.resting().isEmpty()) {
      String heading = texts.say("resting.title");
      line(heading).line("=".repeat(heading.length())).line(texts.say("resting.meaning")).line("");
      list.resting()
          .forEach(one -> line("- %s, %s: %s".formatted(one.animal(), one.reference(), one.why())));
      line("");
    }
  }

  private void questions(FollowUpList list) {
    if (list.questions().isEmpty()) {
      return;
    }
    String heading = texts.say("question.title");
    line(heading).line("=".repeat(heading.length())).line(texts.say("question.meaning"));
    line(texts.say("question.do"));
    line(texts.say("list.attention") + ": " + texts.say("question.caution")).line("");
    list.questionsShown().forEach(this::question);
    if (list.questionsMore() > 0) {
      line(texts.say("question.more", list.questionsMore()));
    }
    line("");
  }

  private void question(Question one) {
    line(
        "- %s, %s %s, %s %s. %s"
            .formatted(
                one.animal(),
                texts.say("list.record"),
                one.record(),
                texts.say("list.reference"),
                one.reference(),
                one.about()));
    one.comparisons().forEach(comparing -> line("  " + comparing.inOneLine()));
  }

  private void task(Task task) {
    String heading = texts.say("task." + task.kind().word());
    line(heading).line("-".repeat(heading.length()));
    line(texts.say("meaning." + task.kind().word()));
    line(texts.say("list.attention") + ": " + task.caution()).line("");
    if (task.isDoneOnce()) {
      rows(task);
    } else {
      task.shown().forEach(this::followUp);
      if (task.more() > 0) {
        line(texts.say("list.more.follow-ups", task.more())).line("");
      }
    }
  }

  private void followUp(FollowUp one) {
    line(one.animal() + " (" + texts.say("mark." + one.mark().word()) + ")");
    fact(texts.say("list.chip", one.chips().size()), numbers(one));
    one.record().ifPresent(record -> fact(texts.say("list.record"), record));
    fact(texts.say("list.reference"), one.reference());
    line(one.wrong());
    one.soFar().forEach(this::line);
    one.cautions().forEach(caution -> line("! " + caution));
    line(texts.say("list.call") + ":");
    callees(one).forEach(callee -> line("- " + callee));
    steps(one.steps());
    evidence(one.evidence());
    comparisons(one.comparisons());
    line("");
  }

  private void comparisons(List<Comparing> comparisons) {
    if (!comparisons.isEmpty()) {
      line(texts.say("compare.title") + ":");
      comparisons.forEach(one -> line("- " + one.inOneLine()));
    }
  }

  private void steps(List<String> steps) {
    line(texts.say("list.do") + ":");
    for (int i = 0; i < steps.size(); i++) {
      line("%d. %s".formatted(i + 1, steps.get(i)));
    }
  }

  /** One thing to do for all, and a line for each. */
  private void rows(Task task) {
    steps(task.steps());
    line("");
    task.shown().forEach(one -> line("- " + row(one)));
    if (task.more() > 0) {
      line(texts.say("list.more", task.more()));
    }
    line("");
  }

  private String row(FollowUp one) {
    return "%s %s, %s (%s), %s %s. %s"
        .formatted(
            texts.say("list.record"),
            one.record().orElse(""),
            one.animal(),
            texts.say("mark." + one.mark().word()),
            texts.say("list.reference"),
            one.reference(),
            one.wrong());
  }

  private void evidence(List<String> sentences) {
    if (!sentences.isEmpty()) {
      line(texts.say("list.evidence") + ":");
      sentences.forEach(sentence -> line("- " + sentence));
    }
  }

  private static String numbers(FollowUp one) {
    return String.join(", ", one.chips().stream().map(ChipNumber::display).toList());
  }

  private List<String> callees(FollowUp one) {
    return one.calls().isEmpty()
        ? List.of(texts.say("call.nobody"))
        : one.calls().stream().map(this::callee).toList();
  }

  private String callee(Callee callee) {
    List<String> phones =
        callee.phones().isEmpty() ? List.of(texts.say("call.no-phone")) : callee.phones();
    Stream<String> details =
        Stream.of(phones, callee.emails(), List.of(callee.address())).flatMap(List::stream);
    String reach = String.join(", ", details.filter(detail -> !detail.isEmpty()).toList());
    return "%s (%s): %s".formatted(callee.name(), callee.why(), reach);
  }

  private void fact(String label, String value) {
    line(label + ": " + value);
  }

  private PlainList line(String content) {
    text.append(content).append('\n');
    return this;
  }
}
