package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import withers.chip.ChipNumber;
import withers.codec.ByteReader;
import withers.codec.finding.AssessmentsJson;
import withers.id.SourceId;

/** Reads the result of a partition, and trusts none of its lengths. */
final class PartReader {
  private final ByteReader in;
  private final List<SourceId> sources = new ArrayList<>();

  PartReader(byte[] bytes) {
    this.in = new ByteReader(bytes);
  }

  PartWire read() {
    if (in.unsigned() != PartWire.FORM) {
      throw in.damaged("another form of a result");
    }
    PartWire part =
        new PartWire(
            in.unsigned(),
            AssessmentsJson.read(in.text()),
            each("chips", this::chip),
            each("chips", this::chip),
            each("chips", this::chip),
            new HashSet<>(each("chips", this::chip)),
            each("known numbers", () -> new PartWire.Known(chip(), source())),
            each("chips", this::chip),
            each("numbers taken back", () -> new PartWire.TakenBack(chip(), day())),
            aside(),
            aside());
    if (!in.atEnd()) {
      throw in.damaged("bytes left over");
    }
    return part;
  }

  private PartWire.Aside aside() {
    return new PartWire.Aside(
        each("numbers aside", () -> new PartWire.OfPerson(chip(), in.reference())),
        each("numbers aside", () -> new PartWire.OfSign(chip(), in.eight())));
  }

  private ChipNumber chip() {
    return ChipNumber.ofPacked(in.unsigned());
  }

  private LocalDate day() {
    return LocalDate.ofEpochDay(in.signed());
  }

  private Optional<SourceId> source() {
    int number = (int) in.unsigned();
    if (number == 1) {
      sources.add(new SourceId(in.text()));
      return Optional.of(sources.get(sources.size() - 1));
    }
    return number == 0 ? Optional.empty() : Optional.of(sources.get(number - 2));
  }

  private <T> List<T> each(String what, Supplier<T> read) {
    List<T> all = new ArrayList<>();
    for (int left = in.length(what); left > 0; left--) {
      all.add(read.get());
    }
    return all;
  }
}
