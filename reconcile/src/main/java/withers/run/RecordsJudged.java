package withers.run;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.damage.DamagedNumbers;
import withers.damage.DamagedRecord;
import withers.damage.KnownNumbers;
import withers.finding.Finding;
import withers.finding.RecordFindings;
import withers.history.Animal;
import withers.history.Sources;
import withers.supply.Stocktake;

/** What is found about records rather than animals, when all partitions are known. */
record RecordsJudged(List<StandAlone> parts, StandAlone.Judge judge, Sources sources) {

  /**
   * The findings about damaged numbers and about supplied boxes.
   *
   * @param placement where damaged numbers belong
   * @param animals all that were put together from several partitions
   */
  RecordFindings findings(Placement placement, List<Animal> animals) {
    return stock().with(damaged(placement, animals));
  }

  /** Whatever a damaged number may be counts as heard of. */
  private RecordFindings stock() {
    Stocktake.Part readings = judge.stocktake().part();
    judge.unplaced().readings().forEach(readings::add);
    judge.unplaced().readingsTakenBack(readings::takenBack);
    return judge
        .stocktake()
        .judge(Stream.concat(parts.stream().map(StandAlone::stock), Stream.of(readings)).toList());
  }

  private List<Finding> damaged(Placement placement, List<Animal> animals) {
    Stream<DamagedRecord> unread =
        judge.unplaced().damaged().stream()
            .flatMap(one -> DamagedRecords.of(one, placement.placeOf(one)));
    Stream<DamagedRecord> cut =
        parts.stream().flatMap(part -> part.cut().stream()).flatMap(DamagedRecords::of);
    List<DamagedRecord> records = Stream.concat(unread, cut).toList();
    if (records.isEmpty()) {
      return List.of();
    }
    Set<ChipNumber> dead =
        animals.stream()
            .filter(judge.rules()::isDead)
            .flatMap(animal -> animal.chips().stream())
            .collect(Collectors.toSet());
    KnownNumbers known = new KnownNumbers(parts.stream().map(StandAlone::known).toList());
    return new DamagedNumbers(sources, known, dead::contains).judge(records);
  }
}
