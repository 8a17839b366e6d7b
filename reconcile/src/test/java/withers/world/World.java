package withers.world;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.MemoryContactVault;
import withers.contact.VaultKey;
import withers.contacts.Answers;
import withers.contacts.FormFinder;
import withers.contacts.People;
import withers.fact.ChipEvent;
import withers.history.Periods;
import withers.history.Scope;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.EventLog;
import withers.log.memory.MemoryEventLog;
import withers.matching.Matcher;
import withers.matching.form.NormalForms;
import withers.organisation.Directory;
import withers.run.Outcome;
import withers.run.Reconciliation;
import withers.run.Workers;

/** Exports in a vault and, when asked, on a log, and what is found in them. */
public final class World {
  public static final Directory DIRECTORY = Cast.DIRECTORY;
  public static final Periods PERIODS = new Periods(30, 3);

  /** Of no worth: the people are invented. */
  static final VaultKey KEY = new VaultKey(1, new byte[VaultKey.LENGTH]);

  private static final int BATCH_SIZE = 5;
  private static final String FORGOTTEN = "forgotten ";

  private static final NormalForms FORMS = new NormalForms("US");

  private record Dated(SourceId source, LocalDate date) {}

  private final ContactVault vault = new MemoryContactVault(KEY);
  private final People people =
      new People(
          DIRECTORY,
          FormFinder.anew(vault::findAll, FORMS),
          FORMS,
          Matcher.builtIn(),
          new Answers());
  private final List<Export> exports = new ArrayList<>();

  /** A world that knows everybody of the cast, and nothing else yet. */
  private World() {
    Cast.PEOPLE.values().forEach(this::deposit);
  }

  /**
   * A world of lines; every source and date in them is a full export. A line {@code source date}
   * alone is an export that says nothing new; {@code forgotten Ada} removes a person's details.
   */
  public static World of(String lines) {
    World world = new World();
    Map<Dated, List<ChipEvent>> said = new LinkedHashMap<>();
    lines
        .lines()
        .filter(text -> !text.isBlank() && !text.startsWith(FORGOTTEN))
        .map(text -> Line.of(text, world::deposit))
        .forEach(line -> world.add(line, said));
    said.forEach((at, events) -> world.add(Export.full(at.source, at.date, events)));
    world.exports.sort(Comparator.comparing(Export::date));
    lines.lines().filter(text -> text.startsWith(FORGOTTEN)).forEach(world::forget);
    return world;
  }

  private void forget(String line) {
    vault.forget(List.of(reference(line.substring(FORGOTTEN.length()).strip())), List.of());
  }

  private void add(Line line, Map<Dated, List<ChipEvent>> said) {
    List<ChipEvent> events =
        said.computeIfAbsent(new Dated(line.source(), line.exported()), at -> new ArrayList<>());
    if (line.words().size() > 2) {
      line.events().forEach(events::add);
    }
  }

  private ContactRef deposit(Contact contact) {
    vault.store(
        List.of(new ContactVault.Deposit(contact, new SourceId("any"), new RecordKey("any"))));
    return vault.reference(contact);
  }

  /** Somebody of the lines, as the vault knows them. */
  public ContactRef reference(String word) {
    return vault.reference(Cast.contact(word));
  }

  public ContactVault vault() {
    return vault;
  }

  public People people() {
    return people;
  }

  public World add(Export export) {
    exports.add(export);
    return this;
  }

  /** Lets every marker of a source say that the disappearances of a date are withheld. */
  public World withholding(String source, LocalDate date) {
    exports.replaceAll(
        export -> export.source().value().equals(source) ? export.withholding(date) : export);
    return this;
  }

  /** Lets every marker of a source say that an operator confirmed the disappearances of a date. */
  public World confirming(String source, LocalDate date) {
    exports.replaceAll(
        export -> export.source().value().equals(source) ? export.confirming(date) : export);
    return this;
  }

  public List<Export> exports() {
    return List.copyOf(exports);
  }

  /** All exports on a log, in order of date. */
  public EventLog log() {
    return log(exports, BATCH_SIZE);
  }

  /** These exports on a log, in their order. */
  public static EventLog log(Collection<Export> exports, int batchSize) {
    EventLog log = new MemoryEventLog();
    long number = 0;
    for (Export export : exports) {
      export.importInto(log, new UUID(0, ++number), batchSize);
    }
    return log;
  }

  public Reconciliation reconciliation(int threads) {
    return new Reconciliation(DIRECTORY, people, PERIODS, new Workers(threads), () -> {});
  }

  public Outcome judge(Scope scope) {
    return reconciliation(1).judge(log().snapshot(), scope);
  }

  public Outcome judge(String asOf) {
    return judge(Scope.asOf(LocalDate.parse(asOf)));
  }

  /** The same by other periods. */
  public Outcome judge(String asOf, Periods periods) {
    return new Reconciliation(DIRECTORY, people, periods, new Workers(1), () -> {})
        .judge(log().snapshot(), Scope.asOf(LocalDate.parse(asOf)));
  }

  /** The same export with its events in another order, some of them repeated. */
  public static Export mixed(Export export, Random random) {
    List<ChipEvent> events = new ArrayList<>(export.events());
    export.events().stream().filter(event -> random.nextInt(4) == 0).forEach(events::add);
    Collections.shuffle(events, random);
    return export.with(events);
  }

  /** The same export in two pieces. */
  public static Stream<Export> cut(Export export, Random random) {
    int at = random.nextInt(export.events().size() + 1);
    return Stream.of(
        export.with(export.events().subList(0, at)),
        export.with(export.events().subList(at, export.events().size())));
  }
}
