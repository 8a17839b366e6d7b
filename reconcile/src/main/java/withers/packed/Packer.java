package withers.packed;

import java.util.Collection;
import java.util.Optional;
import java.util.function.Consumer;
import withers.chip.ChipNumber;
import withers.codec.Bytes;
import withers.contact.ContactRef;

/** Writes one thing as {@link Unpacker} reads it. For one thread. */
public final class Packer {
  private final Common common;
  private final Bytes bytes = new Bytes();
  private long previousChip = -1;

  Packer(Common common) {
    this.common = common;
  }

  /** A number that is seldom negative. */
  public void number(long value) {
    bytes.signed(value);
  }

  public void flag(boolean value) {
    bytes.unsigned(value ? 1 : 0);
  }

  /** A text that hardly any other has. */
  public void text(String value) {
    bytes.text(value);
  }

  /** An immutable value that many have in common. */
  public void common(Object value) {
    bytes.unsigned(common.number(value));
  }

  /** A number of a chip, which mostly is the one before. */
  public void chip(ChipNumber value) {
    boolean again = value.packed() == previousChip;
    flag(again);
    if (!again) {
      bytes.eight(value.packed());
      previousChip = value.packed();
    }
  }

  public void reference(ContactRef value) {
    bytes.reference(value);
  }

  public void bytes(byte[] value) {
    bytes.all(value);
  }

  public <V> void optional(Optional<V> value, Consumer<V> write) {
    flag(value.isPresent());
    value.ifPresent(write);
  }

  public <V> void each(Collection<V> values, Consumer<V> write) {
    bytes.unsigned(values.size());
    values.forEach(write);
  }

  byte[] toArray() {
    return bytes.toArray();
  }
}
