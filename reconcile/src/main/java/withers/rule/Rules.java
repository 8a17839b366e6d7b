package withers.rule;

import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Animal;
import withers.history.History;
import withers.registration.Registries;

/** Judges animals by all rules. Pure; safe for several threads when the vault is. */
public final class Rules {

  /** All rules, in the order of precedence: an animal gets one row, of the first that holds. */
  static final List<Rule> IN_ORDER =
      List.of(
          new FoundWaiting(),
          new ChipsDiverge(),
          new ContactBehind(),
          new RecordsBehind(),
          new Unregistered(),
          new DetailsDiffer());

  private final Registries registries;

  public Rules(Registries registries) {
    this.registries = registries;
  }

  /** Looks up together everybody whom these name: cheaper than one by one, for many animals. */
  public void prepare(Collection<History> histories) {
    registries.cast().prepare(histories);
  }

  public Assessment assess(Animal animal) {
    if (animal.isDead()) {
      return Assessment.clear(animal.chips());
    }
    Dossier dossier = Dossier.of(animal, registries);
    Tally tally = new Tally();
    IN_ORDER.forEach(rule -> tally.add(rule.kind(), rule.judge(dossier), dossier));
    return new Assessment(animal.chips(), tally.finding, tally.undecided, tally.notJudged);
  }

  private static final class Tally {
    private Optional<Finding> finding = Optional.empty();
    private final Set<FindingKind> undecided = EnumSet.noneOf(FindingKind.class);
    private final Set<NotJudged> notJudged = new HashSet<>();

    void add(FindingKind kind, Judgement judgement, Dossier dossier) {
      if (judgement instanceof Judgement.Undecided open) {
        undecided.add(kind);
        notJudged.addAll(open.lacking());
      } else if (judgement instanceof Judgement.Holds holds) {
        take(kind, holds, dossier);
      }
    }

    private void take(FindingKind kind, Judgement.Holds holds, Dossier dossier) {
      if (finding.isPresent()) {
        undecided.add(kind);
      } else {
        finding = Optional.of(new FindingWriter(dossier).write(kind, holds));
      }
    }
  }
}
