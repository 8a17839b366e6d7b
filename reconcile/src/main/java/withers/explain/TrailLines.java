package withers.explain;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.custody.Custody;
import withers.custody.Deaths;
import withers.custody.Handover;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.history.Statement;

/** An animal's trail, line by line, and how each handover is read. */
record TrailLines(Custody custody, Deaths deaths, Naming naming) {

  List<String> lines() {
    Stream<String> handovers = custody.trail().handovers().stream().map(this::line);
    Stream<String> tenures = custody.tenures().stream().map(this::line);
    Stream<String> doubt = custody.isInDoubt() ? Stream.of(doubt()) : Stream.empty();
    Stream<String> died = deaths.contradicted().stream().map(this::died);
    return Stream.of(handovers, tenures, doubt, died).flatMap(lines -> lines).toList();
  }

  private String line(Handover handover) {
    return "%s %s, from %s to %s: %s"
        .formatted(
            handover.statement().day(),
            handover.basis().name().toLowerCase(Locale.ROOT).replace('_', ' '),
            naming.of(handover.giver()),
            naming.of(handover.receiver()),
            reading(handover));
  }

  private String doubt() {
    return "custody is in doubt: handovers of one day leave the animal with %s; so there is no keeper"
        .formatted(
            custody.trail().last().candidates().stream()
                .map(handover -> naming.of(handover.receiver()))
                .distinct()
                .collect(Collectors.joining(" and with ")));
  }

  private String died(Statement death) {
    Optional<LocalDate> alive =
        deaths.signsOfLife().stream().map(Statement::day).max(LocalDate::compareTo);
    return "a death on %s is contradicted: another organisation dealt with the animal, last on %s"
        .formatted(death.day(), alive.map(LocalDate::toString).orElse("?"));
  }

  private String reading(Handover handover) {
    if (handover.basis().temporary()) {
      return "for a time; the receiver holds the animal, and its custodian stays";
    }
    boolean starts = custody.tenures().stream().anyMatch(t -> startsWith(t, handover));
    if (starts) {
      return "for good, and the last; it makes the receiver the custodian";
    }
    if (!custody.trail().counted().contains(handover)) {
      return "for good, but not counted: another one tells it already, or it names nobody";
    }
    return "for good; a later handover or visit counts";
  }

  private static boolean startsWith(Tenure tenure, Handover handover) {
    return tenure.start().equals(handover.statement());
  }

  private String line(Tenure tenure) {
    boolean byVisits = tenure.start().fact() instanceof Fact.Attended;
    Optional<String> second =
        tenure.confirmedBy().map(visit -> ", confirmed by the one of %s".formatted(visit.day()));
    return "custodian since %s, by a %s%s: %s"
        .formatted(
            tenure.since(),
            byVisits ? "visit" : "handover",
            second.orElse(""),
            naming.of(tenure.who()));
  }
}
