package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import withers.chip.ChipNumber;
import withers.codec.Bytes;
import withers.codec.finding.AssessmentsJson;
import withers.damage.KnownNumbers;
import withers.history.History;
import withers.id.SourceId;
import withers.slip.Side;

/** Writes the result of a partition as {@link PartReader} reads it. */
final class PartWriter {
  private final Bytes out = new Bytes();
  private final Map<SourceId, Integer> sources = new HashMap<>();

  byte[] write(StandAlone part) {
    out.unsigned(PartWire.FORM);
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
    List<PartWire.Known> all = new ArrayList<>();
    part.forEach((number, onlyFrom) -> all.add(new PartWire.Known(number, onlyFrom)));
    each(
        all,
        one -> {
          chip(one.number());
          one.onlyFrom().ifPresentOrElse(this::source, () -> out.unsigned(0));
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
    List<PartWire.TakenBack> takenBack = new ArrayList<>();
    part.stock()
        .forEach(known::add, (number, on) -> takenBack.add(new PartWire.TakenBack(number, on)));
    chips(known);
    each(
        takenBack,
        one -> {
          chip(one.number());
          out.signed(one.on().toEpochDay());
        });
  }

  private void aside(Side side) {
    List<PartWire.OfPerson> people = new ArrayList<>();
    side.forEachPerson(
        (number, person) -> people.add(new PartWire.OfPerson(ChipNumber.ofPacked(number), person)));
    List<PartWire.OfSign> told = new ArrayList<>();
    side.forEachSign(
        (sign, number) -> told.add(new PartWire.OfSign(ChipNumber.ofPacked(number), sign)));
    each(people, this::person);
    each(told, this::sign);
  }

  private void person(PartWire.OfPerson one) {
    chip(one.number());
    out.reference(one.person());
  }

  private void sign(PartWire.OfSign one) {
    chip(one.number());
    out.eight(one.sign());
  }

  private <T> void each(List<T> all, Consumer<T> write) {
    out.unsigned(all.size());
    all.forEach(write);
  }
}
