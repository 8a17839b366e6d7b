package withers.explain;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.NotJudged;
import withers.finding.RunResult;

/** How a run left a follow-up, and what keeps it out of sight. */
record CaseState(RunResult run, CaseKey key, Naming naming) {

  Optional<Finding> finding() {
    return run.findings().stream().filter(f -> f.caseKey().equals(key)).findFirst();
  }

  /** Whether it is no follow-up, but something that a human may be able to tell. */
  private boolean isQuestion() {
    return run.questions().stream().anyMatch(question -> question.key().equals(key));
  }

  String state() {
    if (isQuestion()) {
      return "a question, no follow-up: whoever knows may tell";
    }
    if (run.opened().contains(key)) {
      return "opened by this run";
    }
    if (run.closed().contains(key)) {
      return "closed by this run: the records no longer say so";
    }
    if (run.settled().contains(key)) {
      return "settled by a person, and not listed";
    }
    if (finding().isPresent()) {
      return "found again by this run";
    }
    return run.stillOpen().contains(key)
        ? "open, and not found by this run"
        : "not open any more under this name";
  }

  /** What hides it, a line each; one line when nothing does. */
  List<String> hiding() {
    List<String> reasons =
        finding().isPresent() ? unlisted() : run.stillOpen().contains(key) ? unfound() : List.of();
    return reasons.isEmpty() ? List.of("nothing") : reasons;
  }

  private List<String> unlisted() {
    Stream<String> waiting =
        run.backlogs().stream()
            .filter(backlog -> backlog.waiting().contains(key))
            .map(
                backlog ->
                    "it waits in the backlog of %s, until others are settled"
                        .formatted(backlog.since()));
    Stream<String> resting =
        run.lives().stream()
            .filter(life -> life.key().equals(key) && life.rests())
            .map(
                life ->
                    "it was %s, and comes up again on %s"
                        .formatted(
                            life.stage() == Life.Stage.ANSWERED ? "answered" : "put off",
                            life.until().map(LocalDate::toString).orElse("a day to come")));
    Stream<String> aside =
        run.aside().contains(key)
            ? Stream.of(
                "it is counted in the overview only: %s can ask for the kind with \"also\" in organisations.yaml"
                    .formatted(naming.of(key.actor())))
            : Stream.empty();
    return Stream.of(waiting, resting, aside).flatMap(lines -> lines).toList();
  }

  private List<String> unfound() {
    Stream<String> pressing =
        run.findings().stream()
            .filter(this::isOfTheAnimal)
            .map(
                finding ->
                    "the animal has a row for %s, which comes first; this one neither opens nor closes"
                        .formatted(finding.kind().word()));
    Stream<String> lacking =
        run.notJudged().stream().filter(one -> isAnchor(one.anchor())).map(this::lack).distinct();
    return Stream.concat(pressing, lacking).toList();
  }

  private boolean isOfTheAnimal(Finding finding) {
    return finding.anchor() instanceof Anchor.Chip
        && finding.chips().stream().anyMatch(this::isAnchor);
  }

  private boolean isAnchor(ChipNumber number) {
    return key.anchor() instanceof Anchor.Chip chip && chip.number().equals(number);
  }

  private String lack(NotJudged one) {
    return "it could not be judged: %s, %s"
        .formatted(
            naming.of(one.registry()),
            one.reason().name().toLowerCase(Locale.ROOT).replace('_', ' '));
  }
}
