package withers.cases;

import java.util.Comparator;
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
    return Order.BY_KIND.compare(this, other);
  }

  /** The natural order. */
  final class Order {
    private static final Comparator<Anchor> BY_KIND =
        Comparator.comparing((Anchor anchor) -> anchor instanceof Source)
            .thenComparing(Order::byContent);

    private Order() {}

    private static int byContent(Anchor one, Anchor other) {
      return one instanceof Chip chip && other instanceof Chip second
          ? chip.number.compareTo(second.number)
          : one.display().compareTo(other.display());
    }
  }
}
