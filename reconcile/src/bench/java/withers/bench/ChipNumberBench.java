package withers.bench;

import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;

/**
 * Reading a chip number. Settles that fifteen plain digits are read by themselves, before any other
 * spelling is thought of: the way for all spellings is what a grouped number takes.
 */
public class ChipNumberBench extends AverageOfOne {
  /** Plain, grouped, and with a letter O for a zero, which is refused with its candidates. */
  @Param({"999010100000042", "999 010 100 000 042", "99901010000OO42"})
  public String text = "";

  private final ChipNumberReader reader = new ChipNumberReader(true);

  @Benchmark
  public Reading read() {
    return reader.read(text);
  }
}
