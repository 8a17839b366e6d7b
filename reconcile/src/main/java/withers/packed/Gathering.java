package withers.packed;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Gathers things, packed, to a list that unpacks them. For one thread. */
public final class Gathering<T> {
  private final Packing<T> packing;
  private final Common common;
  private final List<byte[]> packed = new ArrayList<>();

  /**
   * Nothing yet.
   *
   * @param common what is held for all that belongs together
   */
  public Gathering(Packing<T> packing, Common common) {
    this.packing = packing;
    this.common = common;
  }

  public void add(T value) {
    Packer out = new Packer(common);
    packing.pack(value, out);
    packed.add(out.toArray());
  }

  public void addAll(Collection<? extends T> values) {
    values.forEach(this::add);
  }

  /** What was gathered, in this order; the gathering is used up. */
  public LazyList<T> list() {
    return LazyList.of(
        packed.size(), index -> packing.unpack(new Unpacker(common, packed.get(index))));
  }
}
