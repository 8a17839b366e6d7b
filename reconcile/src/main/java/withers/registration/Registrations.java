package withers.registration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import withers.chip.ChipNumber;
import withers.custody.Cast;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Party;
import withers.history.Animal;
import withers.history.Statement;
import withers.id.RecordKey;
import withers.id.SourceId;

/** Finds an animal's live registrations. */
public final class Registrations {
  private Registrations() {}

  private record RegistryRecord(ChipNumber chip, SourceId source, RecordKey key)
      implements Comparable<RegistryRecord> {
    private static final Comparator<RegistryRecord> ORDER =
        Comparator.comparing(RegistryRecord::chip)
            .thenComparing(RegistryRecord::source)
            .thenComparing(RegistryRecord::key);

    static RegistryRecord of(Statement statement) {
      return new RegistryRecord(statement.chip(), statement.source(), statement.key());
    }

    @Override
    public int compareTo(RegistryRecord other) {
      return ORDER.compare(this, other);
    }
  }

  /** The live registrations, by chip, source and key. */
  public static List<LiveRegistration> live(Animal animal, Cast cast) {
    Set<RegistryRecord> ended = new HashSet<>();
    animal.stating(Fact.RegistrationEnded.class).map(RegistryRecord::of).forEach(ended::add);
    TreeMap<RegistryRecord, List<Statement>> records = new TreeMap<>();
    animal
        .stating(Fact.Registered.class)
        .filter(cast::isRegistry)
        .filter(statement -> !ended.contains(RegistryRecord.of(statement)))
        .sorted(Statement.bySlot())
        .forEach(s -> records.computeIfAbsent(RegistryRecord.of(s), r -> new ArrayList<>()).add(s));
    return records.values().stream()
        .filter(Registrations::isListed)
        .map(said -> registration(said, cast))
        .toList();
  }

  /** A record whose number was damaged since is listed under what it says now. */
  private static boolean isListed(List<Statement> said) {
    return said.stream().anyMatch(Statement::listed);
  }

  private static LiveRegistration registration(List<Statement> said, Cast cast) {
    Statement last = said.get(said.size() - 1);
    return new LiveRegistration(
        last.chip(),
        cast.organisation(last),
        last,
        day(said),
        cast.who(last, primary(last).orElseGet(Party.Unstated::new)));
  }

  private static LocalDate day(List<Statement> said) {
    int since = said.size() - 1;
    Optional<Party> present = primary(said.get(since));
    Optional<LocalDate> stated = said.get(since).event().date();
    while (since > 0 && primary(said.get(since - 1)).equals(present)) {
      since--;
    }
    boolean sameDayForAnother =
        said.subList(0, since).stream()
            .anyMatch(s -> s.event().date().equals(stated) && !primary(s).equals(present));
    return sameDayForAnother
        ? said.get(since).firstStated()
        : stated.orElse(said.get(since).firstStated());
  }

  private static Optional<Party> primary(Statement statement) {
    return ((Fact.Registered) statement.fact()).contact(ContactRole.PRIMARY);
  }
}
