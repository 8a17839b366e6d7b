package withers.run;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.codec.Streams;
import withers.custody.Cast;
import withers.damage.CutNumbers;
import withers.fact.Subject;
import withers.history.Animal;
import withers.history.Folded;
import withers.history.History;
import withers.history.Statement;
import withers.id.SourceId;
import withers.log.LogSnapshot;

/**
 * Goes once through all that the log tells of: animals, each whole with all its chips, and what is
 * said of no animal. Those of which nothing is told are passed over.
 *
 * @param cast who is who, the sources that are heard, and what people settled
 * @param partitionDone told, by any thread, whenever a partition was gone through
 */
public record AllAnimals(LogSnapshot log, Cast cast, Workers workers, Runnable partitionDone) {

  /** A question about animals. Answers are kept, so an empty one costs nothing. */
  public interface Question<T> {

    /** Whether animals with such a statement are asked about; others are passed over. */
    boolean concerns(Statement statement);

    /** The answers; several threads ask. */
    Stream<T> ask(Animal animal);
  }

  /**
   * What came of it.
   *
   * @param answers in no order
   * @param unplaced statements in effect that are said of no animal: their number is missing, can't
   *     be read, or lost digits
   */
  public record Told<T>(List<T> answers, List<Folded.Kept> unplaced) {
    public Told {
      answers = List.copyOf(answers);
      unplaced = List.copyOf(unplaced);
    }
  }

  private record Answer<T>(ChipNumber anchor, T value) {}

  private record Part<T>(
      List<Answer<T>> answers, List<History> deferred, List<History> cut, Set<ChipNumber> zeros) {
    Part() {
      this(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new HashSet<>());
    }
  }

  private record About(SourceId source, Subject subject) {}

  /** Asks about every animal that a question concerns. */
  public <T> Told<T> ask(Question<T> question) {
    PartitionReader reader = new PartitionReader(log, cast.sources(), cast.settlements());
    Unplaced unplaced = Unplaced.read(log, cast.sources());
    List<Part<T>> parts =
        workers.map(
            IntStream.range(0, Streams.CHIPS.partitions()).boxed().toList(),
            partition -> part(reader.histories(partition).toList(), unplaced, question));
    Deferred deferred = deferred(parts);
    deferred.place(unplaced);
    Set<ChipNumber> late = deferred.missing();
    deferred.fetch(reader.histories(late));
    List<Animal> joined = deferred.animals();
    Stream<T> alone =
        parts.stream()
            .flatMap(part -> part.answers.stream())
            .filter(answer -> !late.contains(answer.anchor))
            .map(Answer::value);
    return new Told<>(
        Stream.concat(alone, joined.stream().flatMap(animal -> answers(animal, question))).toList(),
        Stream.concat(cut(parts), left(unplaced, joined)).toList());
  }

  private <T> Part<T> part(List<History> histories, Unplaced unplaced, Question<T> question) {
    Part<T> part = new Part<>();
    List<History> alone = new ArrayList<>();
    histories.forEach(history -> place(history, part, alone, unplaced).add(history));
    Stream.concat(alone.stream(), part.deferred.stream())
        .map(History::chip)
        .filter(LostDigits::endsInZeros)
        .forEach(part.zeros::add);
    ask(alone, part, question);
    partitionDone.run();
    return part;
  }

  private List<History> place(
      History history, Part<?> part, List<History> alone, Unplaced unplaced) {
    if (new CutNumbers(cast.sources()).isCut(history)) {
      return part.cut;
    }
    return isPutOff(history, unplaced) ? part.deferred : alone;
  }

  private <T> void ask(List<History> alone, Part<T> part, Question<T> question) {
    List<History> concerned =
        alone.stream().filter(h -> h.statements().stream().anyMatch(question::concerns)).toList();
    for (int from = 0; from < concerned.size(); from += StandAlone.AT_A_TIME) {
      int to = Math.min(concerned.size(), from + StandAlone.AT_A_TIME);
      List<History> some = concerned.subList(from, to);
      cast.prepare(some);
      some.forEach(history -> ask(history, part, question));
    }
  }

  private <T> void ask(History history, Part<T> part, Question<T> question) {
    told(Animal.of(List.of(history)), question)
        .forEach(value -> part.answers.add(new Answer<>(history.chip(), value)));
  }

  private static boolean isPutOff(History history, Unplaced unplaced) {
    return history.isPaired() || unplaced.concerns(history);
  }

  private static <T> Deferred deferred(List<Part<T>> parts) {
    Set<ChipNumber> zeros =
        parts.stream().flatMap(part -> part.zeros.stream()).collect(Collectors.toSet());
    return new Deferred(
        parts.stream().flatMap(part -> part.deferred.stream()).toList(),
        chip -> LostDigits.endsInZeros(chip) && !zeros.contains(chip));
  }

  private <T> Stream<T> answers(Animal animal, Question<T> question) {
    return animal.statements().stream().anyMatch(question::concerns)
        ? told(animal, question)
        : Stream.empty();
  }

  private <T> Stream<T> told(Animal animal, Question<T> question) {
    return cast.discretion().covers(animal) ? Stream.empty() : question.ask(animal);
  }

  private static <T> Stream<Folded.Kept> cut(List<Part<T>> parts) {
    return parts.stream()
        .flatMap(part -> part.cut.stream())
        .flatMap(history -> history.statements().stream())
        .map(statement -> new Folded.Kept(statement.stated(), statement.listed()));
  }

  /** What no animal took. */
  private static Stream<Folded.Kept> left(Unplaced unplaced, List<Animal> animals) {
    Set<About> placed =
        animals.stream()
            .flatMap(animal -> animal.statements().stream())
            .filter(Statement::isPlaced)
            .map(statement -> new About(statement.source(), statement.event().subject()))
            .collect(Collectors.toSet());
    return Stream.concat(
            unplaced.animals().stream().map(Unplaced.OfAnimal::folded),
            unplaced.damaged().stream().map(Unplaced.OfDamaged::folded))
        .flatMap(folded -> folded.kept().stream())
        .filter(kept -> !placed.contains(about(kept)));
  }

  private static About about(Folded.Kept kept) {
    return new About(kept.stated().source(), kept.stated().event().subject());
  }
}
