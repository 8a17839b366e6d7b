package withers.packed;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withers.chip.ChipNumber;
import withers.codec.ByteReader;
import withers.contact.ContactRef;

/** Reads one thing as {@link Packer} wrote it. For one thread. */
public final class Unpacker {

  private final Common common;
  private final ByteReader bytes;
  private @Nullable ChipNumber previousChip;

  Unpacker(Common common, byte[] packed) {
    this.common = common;
    this.bytes = new ByteReader(packed);
  }

  public long number() {
    return bytes.signed();
  }

  public boolean flag() {
    return bytes.unsigned() == 1;
  }

  public String text() {
    return bytes.text();
  }

  /** The value itself that was written, or one equal to it. */
  public <V> V common(Class<V> type) {
    return type.cast(common.value((int) bytes.unsigned()));
  }

  public ChipNumber chip() {
    ChipNumber chip =
        flag() ? Objects.requireNonNull(previousChip) : ChipNumber.ofPacked(bytes.eight());
    previousChip = chip;
    return chip;
  }

  public ContactRef reference() {
    return bytes.reference();
  }

  public byte[] bytes() {
    return bytes.all("bytes");
  }

  public <V> Optional<V> optional(Supplier<V> read) {
    return flag() ? Optional.of(read.get()) : Optional.empty();
  }

  public <V> List<V> each(Supplier<V> read) {
    int size = (int) bytes.unsigned();
    if (size == 0) {
      return List.of();
    }
    List<V> all = new ArrayList<>(size);
    for (int i = 0; i < size; i++) {
      all.add(read.get());
    }
    return all;
  }
}
