package withers.codec;

import java.util.Arrays;

/** The values of a shape's fields, by position. */
final class Values {

  private final Object[] values;

  private Values(Object[] values) {
    this.values = values;
  }

  static Values of(Object... values) {
    return new Values(values);
  }

  /** The value at a position, of the type that the table gives it. */
  @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
  <T> T at(int position) {
    return (T) values[position];
  }

  /** These values and more behind them, as an upcast adds them. */
  Values and(Object... more) {
    Object[] all = Arrays.copyOf(values, values.length + more.length);
    System.arraycopy(more, 0, all, values.length, more.length);
    return new Values(all);
  }
}
