package withers.run;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import withers.contact.ContactRef;
import withers.contacts.Answer;
import withers.contacts.People;
import withers.contacts.Question;
import withers.custody.Cast;
import withers.custody.Discretion;
import withers.damage.CutNumbers;
import withers.history.Folded;
import withers.history.History;
import withers.history.Periods;
import withers.history.Sources;
import withers.history.Statement;
import withers.log.LogSnapshot;
import withers.organisation.Directory;
import withers.registration.Registries;
import withers.rule.Rules;
import withers.settled.Settlements;
import withers.supply.Stocktake;
import withers.supply.Supplies;

/**
 * A run's partitions, judged by somebody who has no vault: with the same fold and the same rules,
 * and by what is told about contacts. Immutable; safe for several threads.
 */
public final class PartWork {

  /** An animal of which records name more people is left to whoever has the vault. */
  private static final int MOST_COMPARED = 12;

  private final Directory directory;
  private final Periods periods;
  private final Sources sources;
  private final Settlements settlements;
  private final Discretion discretion;
  private final PartitionReader reader;
  private final Unplaced unplaced;
  private final List<Folded.Kept> supplied;

  /**
   * Reads what all partitions need.
   *
   * @param now the log as it is
   * @throws withers.log.LogUnavailableException when it is not the run's log
   */
  public PartWork(LogSnapshot now, PartOrder order, Directory directory, Periods periods) {
    LogSnapshot log = order.heard(now);
    this.directory = directory;
    this.periods = periods;
    this.sources = Sources.of(log.markers(), order.scope());
    this.settlements = SettlementReader.read(log, order.scope());
    this.discretion = DiscretionReader.read(log);
    this.reader = new PartitionReader(log, sources, settlements);
    this.unplaced = Unplaced.read(log, sources);
    this.supplied = Supplies.stated(log, sources);
  }

  /**
   * Judges a partition.
   *
   * @param ask asks whoever has the vault
   * @return the result as bytes
   */
  public byte[] judge(int partition, UnaryOperator<byte[]> ask) {
    List<History> histories = reader.everSpokenOf(partition).toList();
    Question question = question(histories);
    Answer answer = Answer.read(ask.apply(question.bytes()), question);
    StandAlone judged = judge(People.told(directory, answer)).judge(histories.stream());
    return PartWire.write(judged);
  }

  private StandAlone.Judge judge(People people) {
    Cast cast = new Cast(people, sources, settlements, discretion);
    Supplies supplies = Supplies.of(supplied, cast);
    Registries registries = new Registries(directory, cast, periods);
    return new StandAlone.Judge(
        reader,
        new CutNumbers(sources),
        unplaced,
        new Stocktake(supplies, registries),
        new Rules(registries, supplies),
        new Reopening(Optional.empty(), cast, unplaced));
  }

  private Question question(List<History> histories) {
    Question.Builder question = new Question.Builder();
    question.ask(Cast.askedAbout(supplied.stream().map(one -> one.stated().fact())));
    CutNumbers cutNumbers = new CutNumbers(sources);
    histories.stream()
        .filter(history -> StandAlone.isAlone(history, cutNumbers, unplaced))
        .map(history -> Cast.askedAbout(history.statements().stream().map(Statement::fact)))
        .forEach(people -> add(people, question));
    return question.build();
  }

  private static void add(Set<ContactRef> people, Question.Builder question) {
    if (people.size() > MOST_COMPARED) {
      question.ask(people);
    } else {
      question.compare(people);
    }
  }
}
