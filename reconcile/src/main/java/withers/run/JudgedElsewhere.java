package withers.run;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.contacts.People;
import withers.contacts.Question;
import withers.damage.KnownNumbers;
import withers.history.Animal;
import withers.history.History;
import withers.packed.Gathering;
import withers.rule.Assessment;
import withers.slip.Candidates;
import withers.supply.Stocktake;
import withers.work.Crew;

/**
 * Partitions that others judge, who have no vault: here their questions about people are answered,
 * and what they had to leave is judged.
 *
 * @param partitionDone told, by any thread, whenever a partition was judged
 */
record JudgedElsewhere(StandAlone.Judge judge, People people, Runnable partitionDone) {

  /** The partitions that somebody judged. */
  Map<Integer, StandAlone> by(Crew crew, PartOrder order) {
    Map<Integer, StandAlone> parts = new ConcurrentHashMap<>();
    crew.work(
        order.text(),
        Streams.CHIPS.partitions(),
        new Crew.Desk() {
          @Override
          public byte[] answer(byte[] question) {
            Question asked = Question.read(question);
            return people.answer(asked).bytes(asked);
          }

          @Override
          public void done(int part, byte[] result) {
            parts.put(part, whole(PartWire.read(result)));
            partitionDone.run();
          }
        });
    return parts;
  }

  private StandAlone whole(PartWire part) {
    Map<ChipNumber, History> histories = histories(part);
    List<History> left = of(part.left(), histories);
    Candidates.Part aside = aside(part);
    Gathering<Assessment> telling = judge.assessments();
    telling.addAll(part.telling());
    judge.rules().prepare(left);
    left.stream()
        .map(history -> judge.rules().assess(Animal.of(List.of(history)), aside))
        .filter(assessment -> !assessment.isClear())
        .forEach(telling::add);
    return new StandAlone(
        part.animals(),
        telling.list(),
        packed(of(part.deferred(), histories)),
        packed(of(part.cut(), histories)),
        part.zeros(),
        known(part),
        stock(part),
        aside,
        Optional.empty(),
        List.of());
  }

  private Map<ChipNumber, History> histories(PartWire part) {
    Set<ChipNumber> wanted = new HashSet<>(part.deferred());
    wanted.addAll(part.cut());
    wanted.addAll(part.left());
    return judge.reader().histories(wanted).stream()
        .collect(Collectors.toMap(History::chip, Function.identity()));
  }

  private List<History> packed(List<History> histories) {
    Gathering<History> gathering = judge.histories();
    gathering.addAll(histories);
    return gathering.list();
  }

  private static List<History> of(List<ChipNumber> chips, Map<ChipNumber, History> histories) {
    return chips.stream().flatMap(chip -> Stream.ofNullable(histories.get(chip))).toList();
  }

  private static KnownNumbers.Part known(PartWire part) {
    KnownNumbers.Part known = new KnownNumbers.Part();
    part.known().forEach(one -> known.add(one.number(), one.onlyFrom()));
    return known;
  }

  private Stocktake.Part stock(PartWire part) {
    Stocktake.Part stock = judge.stocktake().part();
    part.stock().forEach(stock::add);
    part.takenBack().forEach(one -> stock.takenBack(one.number(), one.on()));
    return stock;
  }

  private static Candidates.Part aside(PartWire part) {
    Candidates.Part aside = new Candidates.Part();
    part.strays().people().forEach(one -> aside.addStray(one.number(), Stream.of(one.person())));
    part.strays()
        .told()
        .forEach(one -> aside.addToldStray(one.number(), LongStream.of(one.sign())));
    part.carried().people().forEach(one -> aside.addCarried(one.number(), Stream.of(one.person())));
    part.carried()
        .told()
        .forEach(one -> aside.addToldCarried(one.number(), LongStream.of(one.sign())));
    return aside;
  }
}
