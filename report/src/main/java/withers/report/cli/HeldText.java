package withers.report.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.report.privacy.Held;
import withers.report.text.OneLine;

/** All that is held on a person, as lines to be read by that person. */
final class HeldText {
  private final List<String> lines = new ArrayList<>();

  private HeldText() {}

  static List<String> lines(Held held) {
    HeldText text = new HeldText();
    text.section("Details", held.contacts(), HeldText::contact);
    text.section("Records that named this person", held.said(), HeldText::said);
    text.section("Follow-ups of the latest run", held.followUps(), HeldText::followUp);
    text.section("Settled by people", held.settled(), HeldText::settled);
    text.section("Shown or forgotten before", held.audit(), HeldText::audit);
    text.section("Files that hold details, as far as can be found", held.files(), file -> file);
    return text.lines.isEmpty() ? List.of("Nobody like that is held here.") : text.lines;
  }

  private <T> void section(String title, List<T> content, Function<T, String> line) {
    if (!content.isEmpty()) {
      lines.add(title + ":");
      content.forEach(one -> lines.add("  " + OneLine.of(line.apply(one))));
    }
  }

  private static String contact(Held.Contact contact) {
    return Stream.of(
            contact.reference(),
            contact.why(),
            contact.name(),
            String.join(", ", contact.phones()),
            String.join(", ", contact.emails()),
            String.join(", ", contact.address()))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("; "));
  }

  private static String said(Held.Said said) {
    return "%s  %s, record %s (%s): %s, %s; %s"
        .formatted(
            said.on(),
            said.source(),
            said.record(),
            said.organisation(),
            said.about(),
            said.role(),
            said.reference());
  }

  private static String followUp(Held.FollowUp one) {
    String mailed =
        one.mailed().stream().map(LocalDate::toString).collect(Collectors.joining(", "));
    return "%s  %s, on the list of %s%s"
        .formatted(
            one.reference(),
            one.kind(),
            one.organisation(),
            mailed.isEmpty() ? "" : ", told by mail on " + mailed);
  }

  private static String settled(Held.Settled one) {
    return "%s  %s, of %s: %s".formatted(one.on(), one.by(), one.followUp(), one.reason());
  }

  private static String audit(Held.Audit one) {
    return "%s  %s by %s: %s".formatted(one.on(), one.what(), one.by(), one.reason());
  }
}
