package withers.clear;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import withers.chip.ChipNumber;
import withers.codec.ByteReader;
import withers.codec.Bytes;

/**
 * The animals of which a run had plainly nothing to say, and what that rests on. Immutable.
 *
 * @param parts by partition; one that is not there was judged elsewhere
 */
public record ClearAnimals(ClearBasis basis, Map<Integer, ClearPart> parts) {
  public ClearAnimals {
    parts = Map.copyOf(parts);
  }

  /**
   * Those of a partition of which nothing new was said.
   *
   * @param spokenOf what something new was said of
   */
  public StillClear still(int partition, Set<ChipNumber> spokenOf) {
    return new StillClear(parts.getOrDefault(partition, ClearPart.NONE), spokenOf);
  }

  /** As bytes. */
  public byte[] bytes() {
    Bytes out = new Bytes();
    basis.write(out);
    out.unsigned(parts.size());
    new TreeMap<>(parts).forEach((partition, part) -> write(partition, part, out));
    return out.toArray();
  }

  private static void write(int partition, ClearPart part, Bytes out) {
    out.unsigned(partition);
    part.write(out);
  }

  /**
   * Reads what {@link #bytes} wrote.
   *
   * @throws withers.log.LogDamagedException when it is anything else
   */
  public static ClearAnimals read(byte[] bytes) {
    ByteReader in = new ByteReader(bytes);
    ClearBasis basis = ClearBasis.read(in);
    Map<Integer, ClearPart> parts = new HashMap<>();
    for (int left = in.length("partitions"); left > 0; left--) {
      parts.put((int) in.unsigned(), ClearPart.read(in));
    }
    if (!in.atEnd()) {
      throw in.damaged("bytes left over");
    }
    return new ClearAnimals(basis, parts);
  }
}
