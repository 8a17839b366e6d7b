package withers.ingest.change;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import withers.chip.ChipNumber;
import withers.fact.Basis;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.ScanResult;
import withers.fact.Slot;
import withers.fact.Species;
import withers.fact.Subject;
import withers.ingest.change.ModelExport.Row;
import withers.ingest.change.ModelExport.Said;
import withers.source.Extent;

/**
 * Seeded exports of one source, made to collide: few dates, few contents, numbers one slip apart,
 * damaged numbers, animals before their number, keys that come twice, rows that can't be read.
 */
final class RandomExports {

  private static final LocalDate START = LocalDate.of(2026, 1, 31);
  private static final List<ChipNumber> NUMBERS =
      List.of(
          ChipNumber.parse("999000000001001"),
          ChipNumber.parse("999000000001002"), // one slip from the first
          ChipNumber.parse("999000000001010"), // one slip (neighbours changed over) from the first
          ChipNumber.parse("999000000777777"));

  private final Random random;
  private final int keys;
  private final int days;
  private final boolean onlyFull;

  RandomExports(long seed) {
    this.random = new Random(seed);
    this.keys = random.nextInt(4) == 0 ? 40 : 1 + random.nextInt(3);
    this.days = 2 + random.nextInt(4);
    this.onlyFull = random.nextInt(3) == 0;
  }

  Random random() {
    return random;
  }

  List<ModelExport> exports() {
    int count = 2 + random.nextInt(6);
    Map<String, Row> last = new HashMap<>();
    List<ModelExport> exports = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      exports.add(export(last));
    }
    return exports;
  }

  private ModelExport export(Map<String, Row> last) {
    int missingPercent = random.nextInt(3) * 25;
    List<Row> rows = new ArrayList<>();
    for (int k = 0; k < keys; k++) {
      if (random.nextInt(100) >= missingPercent) {
        Row row = row("k" + k, last);
        rows.add(row);
        if (random.nextInt(12) == 0) {
          rows.add(random.nextBoolean() ? row : row("k" + k, last));
        }
      }
    }
    return new ModelExport(START.plusMonths(random.nextInt(days)), extent(), List.copyOf(rows));
  }

  private Row row(String key, Map<String, Row> last) {
    Row before = last.get(key);
    Row row = before != null && random.nextInt(100) < 60 ? before : fresh(key);
    last.put(key, row);
    return row;
  }

  private Row fresh(String key) {
    return new Row(key, random.nextInt(10) == 0 ? List.of() : content());
  }

  private Extent extent() {
    int choice = onlyFull ? 0 : random.nextInt(10);
    if (choice < 5) {
      return new Extent.Full();
    }
    LocalDate from = ownDay();
    return choice < 7 ? new Extent.Changes() : new Extent.Window(from, from.plusDays(1));
  }

  private LocalDate ownDay() {
    return LocalDate.of(2025, 12, 1).plusDays(random.nextInt(4));
  }

  private List<Said> content() {
    Subject subject = subject();
    List<Said> said = new ArrayList<>();
    said.add(
        said(
            subject,
            Slot.ANIMAL,
            new Fact.Described(Species.CAT, name(), Optional.empty(), Optional.empty())));
    if (random.nextBoolean()) {
      said.add(said(subject, Slot.VISIT, new Fact.Attended(party())));
    }
    if (random.nextBoolean()) {
      said.add(
          said(
              subject,
              Slot.INTAKE,
              new Fact.HandedOver(party(), new Party.Own(), Basis.INTAKE_STRAY)));
    }
    if (random.nextInt(4) == 0) {
      said.add(said(subject, Slot.SCAN, new Fact.Scanned(ScanResult.READ)));
    }
    if (!(subject instanceof Subject.Animal) && random.nextInt(3) == 0) {
      said.add(said(subject, Slot.LINK, new Fact.Linked("a" + random.nextInt(2))));
    }
    if (subject instanceof Subject.Chip chip && random.nextInt(4) == 0) {
      ChipNumber other = number();
      if (!other.equals(chip.number())) {
        said.add(said(subject, Slot.PAIRING, new Fact.PairedWith(other)));
        said.add(said(new Subject.Chip(other), Slot.PAIRING, new Fact.PairedWith(chip.number())));
      }
    }
    if (random.nextInt(6) == 0) {
      said.addAll(damagedBeside(subject));
    }
    Collections.shuffle(said, random);
    return List.copyOf(said);
  }

  /** What a row says of a second number that is damaged. */
  private List<Said> damagedBeside(Subject first) {
    Subject second = damaged(random.nextInt(2));
    if (second.equals(first) || first instanceof Subject.Animal) {
      return List.of();
    }
    List<Said> said = new ArrayList<>();
    said.add(
        said(
            second,
            Slot.ANIMAL,
            new Fact.Described(Species.CAT, name(), Optional.empty(), Optional.empty())));
    first
        .chip()
        .ifPresent(number -> said.add(said(second, Slot.PAIRING, new Fact.PairedWith(number))));
    return said;
  }

  private Said said(Subject subject, Slot slot, Fact fact) {
    boolean dated = slot == Slot.INTAKE || random.nextInt(3) == 0;
    return new Said(subject, slot, dated ? Optional.of(ownDay()) : Optional.empty(), fact);
  }

  private Subject subject() {
    return switch (random.nextInt(8)) {
      case 0, 1 -> damaged(random.nextInt(2));
      case 2, 3 -> new Subject.Animal("a" + random.nextInt(2));
      default -> new Subject.Chip(number());
    };
  }

  private static Subject damaged(int which) {
    return which == 0
        ? new Subject.Damaged("9990000O0001001", List.of(NUMBERS.get(0)))
        : new Subject.Damaged("9.99E+14", List.of());
  }

  private ChipNumber number() {
    return NUMBERS.get(random.nextInt(NUMBERS.size()));
  }

  private Optional<String> name() {
    return Optional.of(random.nextBoolean() ? "Nelly" : "Biscuit");
  }

  private Party party() {
    return new Party.Organisation(random.nextBoolean() ? "Harbour" : "Dunes");
  }

  /** Indices from 0 in random order. */
  List<Integer> permutation(int size) {
    List<Integer> order = new ArrayList<>(IntStream.range(0, size).boxed().toList());
    Collections.shuffle(order, random);
    return order;
  }
}
