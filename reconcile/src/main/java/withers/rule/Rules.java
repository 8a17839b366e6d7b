package withers.rule;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.contact.ContactRef;
import withers.contacts.People;
import withers.custody.Deaths;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Animal;
import withers.history.History;
import withers.registration.LiveRegistration;
import withers.registration.Registries;
import withers.slip.Candidates;
import withers.slip.Slip;
import withers.supply.Supplies;

/** Judges animals by all rules. Pure; safe for several threads when the vault is. */
public final class Rules {

  /** All rules, in the order of precedence: an animal gets one row, of the first that holds. */
  static final List<Rule> IN_ORDER =
      List.of(
          new FoundWaiting(),
          new LostUnreachable(),
          new NumberOnTwoAnimals(),
          new CustodyUnclear(),
          new ChipsDiverge(),
          new ContactBehind(),
          new PlaceholderContact(),
          new MistypedRegistration(),
          new RecordsBehind(),
          new PrepaidUnused(),
          new Unregistered(),
          new RegistriesDisagree(),
          new TrailEndsAtPurchaser(),
          new NotDetected(),
          new DetailsDiffer(),
          new RegisteredElsewhere(),
          new ScanOverdue(),
          new NonIsoOnly(),
          new RegisteredAfterDeath());

  private static final List<Rule> OF_THE_DEAD = List.of(new RegisteredAfterDeath());

  private final Registries registries;
  private final Supplies supplies;
  private final Glance glance;
  private final Glance passingGlance;

  public Rules(Registries registries, Supplies supplies) {
    this.registries = registries;
    this.supplies = supplies;
    People people = registries.cast().people();
    this.glance = new Glance(registries, people);
    this.passingGlance = new Glance(registries, people.inPassing());
  }

  /**
   * The same for somebody who can wait: {@link #assess} ends with a {@link
   * withers.contacts.NotPreparedException} where people are to be looked up, and has put nothing
   * aside.
   */
  public Rules patient() {
    return new Rules(registries.patient(), supplies);
  }

  /** Looks these up together. */
  public void lookUp(Collection<ContactRef> people) {
    registries.cast().people().prepare(people);
  }

  /** Looks up together everybody whom these name: cheaper than one by one, for many animals. */
  public void prepare(Collection<History> histories) {
    registries.cast().prepare(histories);
  }

  /** Whether everybody whom this one names was told of before, and need not be looked up. */
  public boolean isPrepared(History history) {
    return registries.cast().isPrepared(history);
  }

  /** A dead animal has nothing more to follow up but that it is registered. */
  private static List<Rule> rules(Dossier dossier) {
    return dossier.deaths().isDead() ? OF_THE_DEAD : IN_ORDER;
  }

  /** Whether it died, by a death that nothing speaks against. */
  public boolean isDead(Animal animal) {
    int window = registries.periods().handoverWindowDays();
    return Deaths.of(animal, registries.cast(), window).isDead();
  }

  /**
   * Looks whether there is plainly nothing to say of an animal that stands on one number. Who is
   * asked about meanwhile is asked in passing, if the animal need not be looked at again.
   *
   * @param aside takes the number when it may belong together with another
   */
  public Sight look(History history, Candidates.Part aside) {
    Seen seen = Seen.of(history, registries.cast());
    Sight sight = (history.lasting() ? passingGlance : glance).look(history, seen);
    if (sight == Sight.STRAY) {
      aside.addStray(history.chip(), seen.registrations().primaries().stream());
    }
    return sight;
  }

  /**
   * Judges an animal by what is known of it alone.
   *
   * @param aside takes what may belong together with another number
   */
  public Assessment assess(Animal animal, Candidates.Part aside) {
    if (isSilent(animal)) {
      return silence(animal);
    }
    Dossier dossier = dossier(animal);
    Assessment assessment = judge(dossier);
    if (!dossier.deaths().isDead()) {
      new Strays(dossier).putAside(aside);
    }
    return assessment;
  }

  /** Judges an animal again, for which a registration of another number may be meant. */
  public Assessment assess(Animal animal, LiveRegistration stray) {
    return isSilent(animal) ? silence(animal) : judge(dossier(animal).with(stray));
  }

  /** The registration of a stray number that may be meant for an animal. */
  public Optional<LiveRegistration> meantFor(Animal animal, Animal stray, Slip slip) {
    return isSilent(animal) || isSilent(stray)
        ? Optional.empty()
        : new Strays(dossier(stray)).meantFor(dossier(animal), slip);
  }

  private boolean isSilent(Animal animal) {
    return registries.cast().discretion().covers(animal);
  }

  /** Nothing is found, asked or counted; what is open stays as it is. */
  private static Assessment silence(Animal animal) {
    return new Assessment(
        animal.chips(),
        Optional.empty(),
        EnumSet.allOf(FindingKind.class),
        Set.of(),
        Optional.empty(),
        List.of());
  }

  private Dossier dossier(Animal animal) {
    return Dossier.of(animal, registries, supplies);
  }

  private static Assessment judge(Dossier dossier) {
    Tally tally = new Tally(dossier);
    rules(dossier).forEach(tally::add);
    return new Assessment(
        dossier.animal().chips(),
        tally.finding,
        tally.undecided,
        tally.notJudged,
        new Questions(dossier).open(),
        tally.settled);
  }

  private static final class Tally {
    private Optional<Finding> finding = Optional.empty();
    private boolean suspended;
    private final Set<FindingKind> undecided = EnumSet.noneOf(FindingKind.class);
    private final Set<NotJudged> notJudged = new HashSet<>();
    private final List<Finding> settled = new ArrayList<>();
    private final Dossier dossier;
    private final HeldBack heldBack;
    private final boolean mayBeSettled;

    Tally(Dossier dossier) {
      this.dossier = dossier;
      this.heldBack = new HeldBack(dossier.cast());
      this.mayBeSettled = dossier.cast().settlements().concern(dossier.animal().chips());
    }

    void add(Rule rule) {
      if (suspended) {
        undecided.add(rule.kind());
        return;
      }
      Judgement judgement = rule.judge(dossier);
      if (judgement instanceof Judgement.Undecided open) {
        undecided.add(rule.kind());
        notJudged.addAll(open.lacking());
      } else if (judgement instanceof Judgement.Holds holds) {
        take(rule, holds);
      }
    }

    private void take(Rule rule, Judgement.Holds holds) {
      Optional<Finding> right = mayBeSettled ? settled(rule, holds) : Optional.empty();
      if (right.isPresent()) {
        settled.add(right.get());
        return;
      }
      suspended = rule.suspendsTheRest();
      if (finding.isPresent()) {
        undecided.add(rule.kind());
      } else {
        finding = Optional.of(written(rule, holds));
      }
    }

    private Optional<Finding> settled(Rule rule, Judgement.Holds holds) {
      return Optional.of(written(rule, holds)).filter(heldBack::isHeldBack);
    }

    private Finding written(Rule rule, Judgement.Holds holds) {
      return new FindingWriter(dossier).write(rule.kind(), holds);
    }
  }
}
