package withers.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.corpus.Pair;
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;

/** How many pairs of normal forms are judged in a second on one core (docs/benchmarks.md). */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class MatcherBench {
  @Param({"EVERYDAY", "TUNING"})
  public Mix mix;

  /** So many that few of them are in a processor's cache when their turn comes. */
  @Param("10000")
  public int pairs;

  private final Matcher matcher = Matcher.builtIn();
  private final Map<String, NormalForms> forms = new HashMap<>();
  private List<Forms> made = List.of();
  private int next;

  private record Forms(NormalForm one, NormalForm other) {}

  @Setup
  public void make() {
    made = new Corpus(mix).pairs(pairs).map(this::of).toList();
  }

  private Forms of(Pair pair) {
    NormalForms country = forms.computeIfAbsent(pair.country(), NormalForms::new);
    return new Forms(country.of(pair.one()), country.of(pair.other()));
  }

  /** What the judging thread really got: on a busy machine seconds say little. */
  @AuxCounters(AuxCounters.Type.EVENTS)
  @State(Scope.Thread)
  public static class Cpu {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final double NANOS = 1e9;

    public long judged;
    public double cpuSeconds;
    private long start;

    @Setup(Level.Iteration)
    public void start() {
      start = THREADS.getCurrentThreadCpuTime();
    }

    @TearDown(Level.Iteration)
    public void stop() {
      cpuSeconds = (THREADS.getCurrentThreadCpuTime() - start) / NANOS;
    }
  }

  @Benchmark
  public Verdict judge(Cpu cpu) {
    cpu.judged++;
    Forms pair = made.get(next);
    next = next + 1 == pairs ? 0 : next + 1;
    return matcher.verdict(pair.one(), pair.other());
  }
}
