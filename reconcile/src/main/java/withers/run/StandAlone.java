package withers.run;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.clear.ClearPart;
import withers.clear.StillClear;
import withers.codec.finding.AssessmentPacking;
import withers.contact.ContactRef;
import withers.contacts.NotPreparedException;
import withers.contacts.NotToldException;
import withers.damage.CutNumbers;
import withers.damage.KnownNumbers;
import withers.fact.Fact;
import withers.history.Animal;
import withers.history.History;
import withers.history.Statement;
import withers.packed.Common;
import withers.packed.Gathering;
import withers.rule.Assessment;
import withers.rule.Rules;
import withers.rule.Sight;
import withers.slip.Candidates;
import withers.supply.Stocktake;

/**
 * What phase 1 makes of one partition: chips that stand alone are judged, the others put off.
 *
 * @param animals how many were judged
 * @param telling the assessments that say something
 * @param deferred histories of chips that may belong together with something elsewhere
 * @param cut histories of numbers that lost digits: they are no animal's
 * @param zeros numbers that end in zeros and are taken at their word
 * @param known all numbers that are not cut
 * @param stock numbers of supplied boxes that are known
 * @param aside numbers that may have been meant for each other
 * @param clear those of which there was plainly nothing to say, whatever else is or will be said
 *     elsewhere; empty when somebody else judged
 * @param left histories of chips that whoever has the vault has to judge; none where that is here
 */
record StandAlone(
    long animals,
    List<Assessment> telling,
    List<History> deferred,
    List<History> cut,
    Set<ChipNumber> zeros,
    KnownNumbers.Part known,
    Stocktake.Part stock,
    Candidates.Part aside,
    Optional<ClearPart> clear,
    List<History> left) {

  /** Chips whose people are looked up together: beyond that it gets no cheaper. */
  static final int AT_A_TIME = 1_000;

  /** Whether an animal is judged by this history alone. */
  static boolean isAlone(History history, CutNumbers cutNumbers, Unplaced unplaced) {
    return !history.statements().isEmpty()
        && !cutNumbers.isCut(history)
        && !isPutOff(history, unplaced);
  }

  private static boolean isPutOff(History history, Unplaced unplaced) {
    return history.isPaired() || unplaced.concerns(history);
  }

  /** Judges partitions. */
  record Judge(
      PartitionReader reader,
      CutNumbers cutNumbers,
      Unplaced unplaced,
      Stocktake stocktake,
      Rules rules,
      Reopening reopening,
      Common common) {

    /** By what is known of a log; nothing was judged yet. */
    Judge(
        PartitionReader reader,
        CutNumbers cutNumbers,
        Unplaced unplaced,
        Stocktake stocktake,
        Rules rules,
        Reopening reopening) {
      this(reader, cutNumbers, unplaced, stocktake, rules, reopening, new Common());
    }

    /** Gathers assessments until all is judged. */
    Gathering<Assessment> assessments() {
      return new Gathering<>(new AssessmentPacking(), common);
    }

    /** Gathers histories until all is known. */
    Gathering<History> histories() {
      return new Gathering<>(new HistoryPacking(), common);
    }

    /** Judges all that was ever spoken of in a partition, but for what is still clear. */
    StandAlone judge(int partition) {
      StillClear still = reopening.still(partition, reader);
      Judging judging = new Judging(this);
      reader.everSpokenOf(partition, still, reopening::reopens).forEach(judging::take);
      judging.take(still);
      return judging.done();
    }

    /** Judges all that was ever spoken of in a partition, each when it comes. */
    StandAlone judge(Stream<History> histories) {
      Judging judging = new Judging(this);
      histories.forEach(judging::take);
      return judging.done();
    }
  }

  private static final class Judging {
    private final Judge judge;
    private final Gathering<Assessment> telling;
    private final Gathering<History> deferred;
    private final Gathering<History> cut;
    private final Set<ChipNumber> zeros = new HashSet<>();
    private final KnownNumbers.Part known = new KnownNumbers.Part();
    private final Stocktake.Part stock;
    private final Candidates.Part aside = new Candidates.Part();
    private final ClearPart.Gathering clear = new ClearPart.Gathering();
    private final List<History> left = new ArrayList<>();
    private final List<History> unprepared = new ArrayList<>();
    private final Rules patient;
    private final List<History> waiting = new ArrayList<>();
    private final Set<ContactRef> awaited = new HashSet<>();
    private long animals;

    Judging(Judge judge) {
      this.judge = judge;
      this.telling = judge.assessments();
      this.deferred = judge.histories();
      this.cut = judge.histories();
      this.patient = judge.rules.patient();
      this.stock = judge.stocktake.part();
    }

    /** Those whose people have to be looked up wait for others: together it is cheaper. */
    void take(History history) {
      if (judge.rules.isPrepared(history)) {
        add(history);
      } else {
        unprepared.add(history);
        if (unprepared.size() == AT_A_TIME) {
          addUnprepared();
        }
      }
    }

    /** What is known of a number is known of it still. */
    void take(StillClear still) {
      animals += still.size();
      still.forEach(
          (chip, onlyFrom) -> {
            stock.add(chip);
            known.add(chip, onlyFrom);
          });
      clear.add(still);
    }

    private void addUnprepared() {
      judge.rules.prepare(unprepared);
      unprepared.forEach(this::add);
      unprepared.clear();
    }

    private void add(History history) {
      if (isHeardOf(history)) {
        stock.add(history.chip());
      } else {
        history.turned().ifPresent(date -> stock.takenBack(history.chip(), date));
      }
      if (!history.statements().isEmpty()) {
        addKnown(history);
      }
    }

    private void addKnown(History history) {
      if (judge.cutNumbers.isCut(history)) {
        cut.add(history);
      } else {
        addNumber(history);
      }
    }

    /** A registry that is asked about a number need not know of it. */
    private static boolean isHeardOf(History history) {
      for (Statement statement : history.statements()) {
        if (!(statement.fact() instanceof Fact.LookedUp)) {
          return true;
        }
      }
      return false;
    }

    private void addNumber(History history) {
      known.add(history);
      if (LostDigits.endsInZeros(history.chip())) {
        zeros.add(history.chip());
      }
      if (isPutOff(history, judge.unplaced)) {
        deferred.add(history);
      } else {
        assess(history);
      }
    }

    private void assess(History history) {
      animals++;
      try {
        Sight sight = judge.rules.look(history, aside);
        if (sight == Sight.UNSURE) {
          judgeByRules(history);
        } else if (sight == Sight.CLEAR && isClearForLong(history)) {
          clear.add(history.chip(), history.onlySource(), history.statements().size());
        }
      } catch (NotToldException elsewhere) {
        left.add(history);
      }
    }

    /** A number that ends in zeros may lose its meaning by what is said of others. */
    private static boolean isClearForLong(History history) {
      return history.lasting() && KnownNumbers.isKept(history.chip());
    }

    /** What explains a new finding is seldom kept: those whom it compares wait, too. */
    private void judgeByRules(History history) {
      try {
        judgeBy(patient, history);
      } catch (NotPreparedException notYet) {
        waiting.add(history);
        awaited.addAll(notYet.references());
        if (waiting.size() == AT_A_TIME) {
          judgeWaiting();
        }
      }
    }

    private void judgeWaiting() {
      judge.rules.lookUp(awaited);
      waiting.forEach(history -> judgeBy(judge.rules, history));
      awaited.clear();
      waiting.clear();
    }

    private void judgeBy(Rules rules, History history) {
      Assessment assessment = rules.assess(Animal.of(List.of(history)), aside);
      if (!assessment.isClear()) {
        telling.add(assessment);
      }
    }

    StandAlone done() {
      addUnprepared();
      judgeWaiting();
      return new StandAlone(
          animals,
          telling.list(),
          deferred.list(),
          cut.list(),
          zeros,
          known,
          stock,
          aside,
          Optional.of(clear.part()),
          left);
    }
  }
}
