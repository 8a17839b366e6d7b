package withers.bench;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.openjdk.jmh.annotations.Benchmark;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.corpus.Pair;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;

/**
 * Making the normal form of a contact whose words and phones were seen before. Settles that forms
 * are kept from run to run (docs/decisions, 30), together with what reading one back takes
 * (docs/benchmarks.md, "Keeping normal forms"): once reading back is no longer much quicker, keeping
 * them is not worth their bytes.
 */
public class NormalFormBench extends AverageOfOne {
  private static final int PAIRS = 2000;

  private final List<Pair> pairs = new Corpus(Mix.EVERYDAY).pairs(PAIRS).toList();
  private final Map<String, NormalForms> forms = new HashMap<>();
  private int next;

  @Benchmark
  public NormalForm make() {
    next = (next + 1) % PAIRS;
    Pair pair = pairs.get(next);
    return forms.computeIfAbsent(pair.country(), NormalForms::new).of(pair.one());
  }
}
