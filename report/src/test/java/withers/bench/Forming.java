package withers.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.contact.Contact;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.matching.form.NormalForms;

/**
 * The program: what making the normal form of a contact takes, in processor time of one thread, by
 * part; with nothing remembered, and again with all words and phones seen before.
 */
@Command(
    name = "forming",
    mixinStandardHelpOptions = true,
    description = "Makes normal forms of the matching corpus' contacts, part by part.")
final class Forming implements Callable<Integer> {

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final double NANOS_IN_MICRO = 1e3;

  private final Console console;

  @Option(names = "--pairs", defaultValue = "10000", description = "Pairs (${DEFAULT-VALUE}).")
  private int pairs;

  @Option(
      names = "--warm-up",
      defaultValue = "4",
      description = "Rounds that are not counted (${DEFAULT-VALUE}).")
  private int warmUp;

  @Option(
      names = "--rounds",
      defaultValue = "9",
      description = "Measured rounds (${DEFAULT-VALUE}).")
  private int rounds;

  private long stated;

  Forming(Console console) {
    this.console = console;
  }

  /**
   * Runs and ends the JVM with its exit code.
   *
   * @param arguments options; {@code --help} tells them
   */
  public static void main(String... arguments) {
    System.exit(new CommandLine(new Forming(Console.ofThisProcess())).execute(arguments));
  }

  /** A contact and the country whose rules read its phones. */
  private record Located(String country, Contact contact) {}

  @Override
  public Integer call() {
    List<Located> contacts =
        new Corpus(Mix.EVERYDAY)
            .pairs(pairs)
            .flatMap(
                pair ->
                    Stream.of(pair.one(), pair.other())
                        .map(contact -> new Located(pair.country(), contact)))
            .toList();
    Machine machine = Machine.here();
    console.print(
        "%,d contacts; %d processors, load %.1f before; Java %s"
            .formatted(
                contacts.size(), machine.processors(), machine.loadAverage(), machine.java()));
    for (Part part : Part.values()) {
      measure(part, contacts);
    }
    return 0;
  }

  private void measure(Part part, List<Located> contacts) {
    List<Located> only =
        contacts.stream().map(one -> new Located(one.country, part.of(one.contact))).toList();
    print(part.word(), only);
  }

  /** With readers by country that may have seen the contacts before. */
  private void make(List<Located> contacts, Map<String, NormalForms> forms) {
    for (Located one : contacts) {
      NormalForms ofCountry = forms.computeIfAbsent(one.country, NormalForms::new);
      stated += ofCountry.of(one.contact).isEmpty() ? 0 : 1;
    }
  }

  private void print(String what, List<Located> contacts) {
    List<Double> first = new ArrayList<>();
    List<Double> again = new ArrayList<>();
    for (int i = -warmUp; i < rounds; i++) {
      Map<String, NormalForms> forms = new HashMap<>();
      double fresh = micros(contacts, forms);
      double known = micros(contacts, forms);
      if (i >= 0) {
        first.add(fresh);
        again.add(known);
      }
    }
    console.print(
        String.format(
            Locale.ROOT,
            "%-10s %8.2f us first %8.2f us again",
            what,
            median(first),
            median(again)));
  }

  /** Processor time for each contact. */
  private double micros(List<Located> contacts, Map<String, NormalForms> forms) {
    long before = THREADS.getCurrentThreadCpuTime();
    make(contacts, forms);
    return (THREADS.getCurrentThreadCpuTime() - before) / NANOS_IN_MICRO / (2.0 * pairs);
  }

  /** How many forms were made that state something. */
  long stated() {
    return stated;
  }

  private static double median(List<Double> figures) {
    return figures.stream().sorted().skip(figures.size() / 2).findFirst().orElseThrow();
  }
}
