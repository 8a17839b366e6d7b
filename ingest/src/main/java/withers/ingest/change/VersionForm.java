package withers.ingest.change;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import withers.chip.ChipNumber;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.fact.Subject;

/**
 * A version as bytes, some 30 where it speaks of one chip. The form lives no longer than a cache.
 */
final class VersionForm {

  /** The kinds of subject, in the order of their numbers. */
  private enum Kind {
    CHIP,
    DAMAGED,
    ANIMAL,
    RANGE;

    static Kind of(Subject subject) {
      if (subject instanceof Subject.Chip) {
        return CHIP;
      }
      if (subject instanceof Subject.Damaged) {
        return DAMAGED;
      }
      return subject instanceof Subject.Animal ? ANIMAL : RANGE;
    }
  }

  private static final Kind[] KINDS = Kind.values();

  private VersionForm() {}

  static void write(Version version, Bytes out) {
    out.eight(version.high());
    out.eight(version.low());
    out.unsigned(version.day() == Version.NO_DAY ? 0 : 1);
    if (version.day() != Version.NO_DAY) {
      out.signed(version.day());
    }
    out.unsigned(version.places().size());
    for (Place place : version.places()) {
      out.unsigned(place.slots());
      subject(place.subject(), out);
    }
    out.unsigned(version.links().size());
    version.links().forEach(out::text);
  }

  private static void subject(Subject subject, Bytes out) {
    out.unsigned(Kind.of(subject).ordinal());
    if (subject instanceof Subject.Chip chip) {
      out.unsigned(chip.number().packed());
    } else if (subject instanceof Subject.Animal animal) {
      out.text(animal.animalId());
    } else if (subject instanceof Subject.Damaged damaged) {
      out.text(damaged.original());
      out.unsigned(damaged.candidates().size());
      damaged.candidates().forEach(candidate -> out.unsigned(candidate.packed()));
    }
  }

  static Version read(ByteReader in) {
    long high = in.eight();
    long low = in.eight();
    int day = in.unsigned() == 0 ? Version.NO_DAY : (int) in.signed();
    List<Place> places = list(in, VersionForm::place);
    return new Version(high, low, places, list(in, ByteReader::text), day);
  }

  private static <T> List<T> list(ByteReader in, Function<ByteReader, T> read) {
    int size = in.length("a list");
    if (size == 0) {
      return List.of();
    }
    List<T> list = new ArrayList<>(size);
    for (int i = 0; i < size; i++) {
      list.add(read.apply(in));
    }
    return list;
  }

  private static Place place(ByteReader in) {
    int slots = (int) in.unsigned();
    return new Place(subject(in), slots);
  }

  private static Subject subject(ByteReader in) {
    return switch (KINDS[(int) in.unsigned()]) {
      case CHIP -> new Subject.Chip(number(in));
      case ANIMAL -> new Subject.Animal(in.text());
      case DAMAGED -> new Subject.Damaged(in.text(), list(in, VersionForm::number));
      case RANGE -> new Subject.Range();
    };
  }

  private static ChipNumber number(ByteReader in) {
    return ChipNumber.ofPacked(in.unsigned());
  }
}
