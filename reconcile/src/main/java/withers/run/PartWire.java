package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import withers.chip.ChipNumber;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.codec.finding.AssessmentsJson;
import withers.contact.ContactRef;
import withers.damage.KnownNumbers;
import withers.history.History;
import withers.id.SourceId;
import withers.rule.Assessment;
import withers.slip.Side;

/**
 * The result of a partition as bytes. What was put off or left is named by its number: whoever has
 * the vault has the log, too.
 */
record PartWire(
    long animals,
    List<Assessment> telling,
    List<ChipNumber> deferred,
    List<ChipNumber> cut,
    List<ChipNumber> left,
    Set<ChipNumber> zeros,
    List<Known> known,
    List<ChipNumber> stock,
    List<TakenBack> takenBack,
    Aside strays,
    Aside carried) {

  /** The form; another one has another number. */
  private static final int FORM = 2;

  record Known(ChipNumber number, Optional<SourceId> onlyFrom) {}

  record TakenBack(ChipNumber number, LocalDate on) {}

  /** Numbers put aside, with people or with signs that were told of them. */
  record Aside(List<OfPerson> people, List<OfSign> told) {}

  record OfPerson(ChipNumber number, ContactRef person) {}

  record OfSign(ChipNumber number, long sign) {}

  static byte[] write(StandAlone part) {
    return new Writer().write(part);
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws withers.log.LogDamagedException when it is anything else
   */
  static PartWire read(byte[] bytes) {
    return new Reader(bytes).read();
  }

  private static final class Writer {
    private final Bytes out = new Bytes();
    private final Map<SourceId, Integer> sources = new HashMap<>();

    byte[] write(StandAlone part) {
      out.unsigned(FORM);
      out.unsigned(part.animals());
      out.text(AssessmentsJson.write(part.telling()));
      chips(part.deferred().stream().map(History::chip).toList());
      chips(part.cut().stream().map(History::chip).toList());
      chips(part.left().stream().map(History::chip).toList());
      chips(part.zeros());
      known(part.known());
      stock(part);
      aside(part.aside().strays());
      aside(part.aside().carried());
      return out.toArray();
    }

    private void chips(Collection<ChipNumber> chips) {
      out.unsigned(chips.size());
      chips.forEach(this::chip);
    }

    private void chip(ChipNumber chip) {
      out.unsigned(chip.packed());
    }

    private void known(KnownNumbers.Part part) {
      List<Known> all = new ArrayList<>();
      part.forEach((number, onlyFrom) -> all.add(new Known(number, onlyFrom)));
      each(
          all,
          one -> {
            chip(one.number);
            one.onlyFrom.ifPresentOrElse(this::source, () -> out.unsigned(0));
          });
    }

    /** 1 and the text when it is new, else its number from 2; 0 is none. */
    private void source(SourceId source) {
      Integer number = sources.putIfAbsent(source, sources.size() + 2);
      out.unsigned(number == null ? 1 : number);
      if (number == null) {
        out.text(source.value());
      }
    }

    private void stock(StandAlone part) {
      List<ChipNumber> known = new ArrayList<>();
      List<TakenBack> takenBack = new ArrayList<>();
      part.stock().forEach(known::add, (number, on) -> takenBack.add(new TakenBack(number, on)));
      chips(known);
      each(
          takenBack,
          one -> {
            chip(one.number);
            out.signed(one.on.toEpochDay());
          });
    }

    private void aside(Side side) {
      List<OfPerson> people = new ArrayList<>();
      side.forEachPerson(
          (number, person) -> people.add(new OfPerson(ChipNumber.ofPacked(number), person)));
      List<OfSign> told = new ArrayList<>();
      side.forEachSign((sign, number) -> told.add(new OfSign(ChipNumber.ofPacked(number), sign)));
      each(people, this::person);
      each(told, this::sign);
    }

    private void person(OfPerson one) {
      chip(one.number);
      out.reference(one.person);
    }

    private void sign(OfSign one) {
      chip(one.number);
      out.eight(one.sign);
    }

    private <T> void each(List<T> all, Consumer<T> write) {
      out.unsigned(all.size());
      all.forEach(write);
    }
  }

  private static final class Reader {
    private final ByteReader in;
    private final List<SourceId> sources = new ArrayList<>();

    Reader(byte[] bytes) {
      this.in = new ByteReader(bytes);
    }

    PartWire read() {
      if (in.unsigned() != FORM) {
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
              each("known numbers", () -> new Known(chip(), source())),
              each("chips", this::chip),
              each("numbers taken back", () -> new TakenBack(chip(), day())),
              aside(),
              aside());
      if (!in.atEnd()) {
        throw in.damaged("bytes left over");
      }
      return part;
    }

    private Aside aside() {
      return new Aside(
          each("numbers aside", () -> new OfPerson(chip(), in.reference())),
          each("numbers aside", () -> new OfSign(chip(), in.eight())));
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
}
