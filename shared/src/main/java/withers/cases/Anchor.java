package withers.cases;

import withers.chip.ChipNumber;
import withers.id.SourceId;

/**
 * What a follow-up hangs on, and keeps hanging on from run to run. The natural order puts chips, in
 * order of number, before sources, in order of id.
 */
public sealed interface Anchor extends Comparable<Anchor> {

  /** An animal, by the lowest number that it carries. */
  record Chip(ChipNumber number) implements Anchor {
    @Override
    public String display() {
      return number.display();
    }
  }

  /** A source, for a record of it that leads to no animal: the record key tells which. */
  record Source(SourceId id) implements Anchor {
    @Override
    public String display() {
      return id.value();
    }
  }

  /** The number or the source's id. */
  String display();

  @Override
  default int compareTo(Anchor other) {
    if (this instanceof Chip one && other instanceof Chip second) {
      return one.number.compareTo(second.number);
    }
    return this instanceof Source one && other instanceof Source second
        ? one.id.compareTo(second.id)
        : Boolean.compare(this instanceof Source, other instanceof Source);
  }
}
