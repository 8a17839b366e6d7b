package withers.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.stream.LongStream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.VaultKey;
import withers.contact.sqlite.SqliteContactVault;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * The program: what a contact costs in the vault, in processor time of one thread and on the wall:
 * making its reference, storing it among many, finding it again at random.
 */
@Command(
    name = "vaulting",
    mixinStandardHelpOptions = true,
    description = "Stores the matching corpus' contacts in a new vault, and finds them again.")
final class Vaulting implements Callable<Integer> {

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final double NANOS_IN_MICRO = 1e3;
  private static final SourceId SOURCE = new SourceId("bench");

  private final Console console;

  @Option(
      names = "--contacts",
      defaultValue = "1000000",
      description = "Contacts (${DEFAULT-VALUE}).")
  private int contacts;

  @Option(
      names = "--batch",
      defaultValue = "100000",
      description = "Contacts stored at once (${DEFAULT-VALUE}).")
  private int batch;

  @Option(
      names = "--together",
      defaultValue = "2000",
      description = "Contacts looked up at once (${DEFAULT-VALUE}).")
  private int together;

  @Option(names = "--seed", defaultValue = "1", description = "Of the order of looking up.")
  private long seed;

  private final Meter referring = new Meter();
  private final Meter storing = new Meter();
  private final Meter finding = new Meter();
  private long stored;
  private long found;

  Vaulting(Console console) {
    this.console = console;
  }

  /**
   * Runs and ends the JVM with its exit code.
   *
   * @param arguments options; {@code --help} tells them
   */
  public static void main(String... arguments) {
    System.exit(new CommandLine(new Vaulting(Console.ofThisProcess())).execute(arguments));
  }

  /** Adds up what work takes. */
  private static final class Meter {
    private long processor;
    private long wall;

    private void measure(Runnable work) {
      long processorBefore = THREADS.getCurrentThreadCpuTime();
      long wallBefore = System.nanoTime();
      work.run();
      processor += THREADS.getCurrentThreadCpuTime() - processorBefore;
      wall += System.nanoTime() - wallBefore;
    }

    private String line(String what, long times) {
      return String.format(
          Locale.ROOT,
          "%-18s %6.2f us of the processor %6.2f us on the wall",
          what,
          processor / NANOS_IN_MICRO / times,
          wall / NANOS_IN_MICRO / times);
    }
  }

  @Override
  public Integer call() throws IOException {
    Machine machine = Machine.here();
    Path folder = Files.createTempDirectory("withers-vaulting");
    try (ContactVault vault =
        SqliteContactVault.open(folder.resolve("contacts.db"), VaultKey.random(1))) {
      List<ContactRef> references = fill(vault);
      Collections.shuffle(references, new Random(seed));
      find(vault, references);
    } finally {
      Folders.remove(folder);
    }
    console.print(
        "%,d contacts; %d processors, load %.1f before; Java %s"
            .formatted(contacts, machine.processors(), machine.loadAverage(), machine.java()));
    console.print(referring.line("making a reference", contacts));
    console.print(storing.line("storing", contacts));
    console.print(finding.line("finding", contacts));
    return 0;
  }

  private List<ContactRef> fill(ContactVault vault) {
    List<ContactRef> references = new ArrayList<>(contacts);
    for (int from = 0; from < contacts; from += batch) {
      List<Contact> some = some(from, Math.min(contacts, from + batch));
      referring.measure(() -> some.forEach(one -> references.add(vault.reference(one))));
      storing.measure(() -> stored += vault.store(deposits(some, tail(references, some.size()))));
    }
    return references;
  }

  /** Told apart by a number, as strangers seldom have all in common. */
  private static List<Contact> some(int from, int to) {
    Corpus corpus = new Corpus(Mix.EVERYDAY);
    return LongStream.range(from, to)
        .mapToObj(number -> numbered(corpus.pair((int) number).one(), number))
        .toList();
  }

  private static Contact numbered(Contact one, long number) {
    return new Contact(
        one.name(),
        one.givenName(),
        one.familyName(),
        one.phones(),
        List.of("person%d@example.org".formatted(number)),
        one.addressLines(),
        one.postcode(),
        one.town(),
        one.region(),
        one.country());
  }

  private static List<ContactRef> tail(List<ContactRef> references, int size) {
    return references.subList(references.size() - size, references.size());
  }

  private static List<ContactVault.Deposit> deposits(
      List<Contact> some, List<ContactRef> references) {
    List<ContactVault.Deposit> deposits = new ArrayList<>(some.size());
    for (int i = 0; i < some.size(); i++) {
      deposits.add(
          new ContactVault.Deposit(
              some.get(i), Optional.of(references.get(i)), SOURCE, new RecordKey("P" + i)));
    }
    return deposits;
  }

  private void find(ContactVault vault, List<ContactRef> references) {
    for (int from = 0; from < references.size(); from += together) {
      List<ContactRef> some =
          references.subList(from, Math.min(references.size(), from + together));
      finding.measure(() -> found += vault.findAll(some).size());
    }
  }

  long stored() {
    return stored;
  }

  long found() {
    return found;
  }
}
