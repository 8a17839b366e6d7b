package withers.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;

/**
 * Reading a chip number. Settles that fifteen plain digits are read by themselves, before any other
 * spelling is thought of: the way for all spellings is what a grouped number takes.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ChipNumberBench {
  /** Plain, grouped, and with a letter O for a zero, which is refused with its candidates. */
  @Param({"999010100000042", "999 010 100 000 042", "99901010000OO42"})
  public String text = "";

  private final ChipNumberReader reader = new ChipNumberReader(true);

  @Benchmark
  public Reading read() {
    return reader.read(text);
  }
}
