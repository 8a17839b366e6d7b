package withers.scorecard;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Subject;
import withers.history.Animal;
import withers.history.Folded;
import withers.history.Stated;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * What the listed records of clinics say of one animal.
 *
 * @param statements in effect, of any clinic
 */
record ClinicRecords(Group group, List<Stated> statements) {

  /** A record of a clinic. */
  record Name(SourceId source, RecordKey key) implements Comparable<Name> {
    private static final Comparator<Name> ORDER =
        Comparator.comparing(Name::source).thenComparing(Name::key);

    static Name of(Stated stated) {
      return new Name(stated.source(), stated.key());
    }

    @Override
    public int compareTo(Name other) {
      return ORDER.compare(this, other);
    }
  }

  /** A day on which a clinic saw the animal, not too long ago. */
  record Sight(OrganisationId clinic, LocalDate day, Name record) {

    /** By day; the record decides between several of one day. */
    static final Comparator<Sight> BY_DAY =
        Comparator.comparing(Sight::day).thenComparing(Sight::record);
  }

  ClinicRecords {
    statements = List.copyOf(statements);
  }

  static ClinicRecords of(Group group, Animal animal) {
    return new ClinicRecords(
        group,
        animal.statements().stream()
            .filter(Statement::listed)
            .filter(statement -> group.isClinics(statement.source()))
            .map(Statement::stated)
            .toList());
  }

  /** The records of statements that are of no animal, each by itself. */
  static Collection<ClinicRecords> each(Group group, List<Folded.Kept> unplaced) {
    Map<Name, List<Stated>> records =
        unplaced.stream()
            .filter(Folded.Kept::listed)
            .map(Folded.Kept::stated)
            .filter(stated -> group.isOwn(stated.source()))
            .collect(Collectors.groupingBy(Name::of, TreeMap::new, Collectors.toList()));
    return records.values().stream().map(stated -> new ClinicRecords(group, stated)).toList();
  }

  private Stream<Stated> own() {
    return statements.stream().filter(stated -> group.isOwn(stated.source()));
  }

  /** Whether the group has a record of it. */
  boolean areOfPatient() {
    return own().findAny().isPresent();
  }

  /** Whether they tell of a death. */
  boolean tellOfDeath() {
    return statements.stream().anyMatch(stated -> stated.fact() instanceof Fact.Died);
  }

  /** Whether the group has a number of it that can be read. */
  boolean haveNumber() {
    return own().anyMatch(stated -> !(stated.event().subject() instanceof Subject.Damaged));
  }

  /** When it was seen, by any clinic, within the time that makes a patient active there. */
  List<Sight> sights() {
    return statements.stream()
        .filter(stated -> Group.isSight(stated.fact()))
        .map(this::sight)
        .filter(sight -> group.isActive(sight.clinic, sight.day))
        .toList();
  }

  private Sight sight(Stated stated) {
    return new Sight(group.clinic(stated.source()), stated.event().day(), Name.of(stated));
  }

  /** Whether the group scanned it, or put a chip in and so read it, while it was active. */
  Told scanned() {
    if (own().filter(this::isScan).anyMatch(this::isActive)) {
      return Told.YES;
    }
    return own().map(Stated::source).allMatch(group::tellsScans) ? Told.NO : Told.NOT_KNOWN;
  }

  private boolean isScan(Stated stated) {
    return stated.fact() instanceof Fact.Scanned
        || stated.fact() instanceof Fact.Implanted implanted
            && implanted.implanter() instanceof Party.Own;
  }

  private boolean isActive(Stated stated) {
    return group.isActive(group.clinic(stated.source()), stated.event().day());
  }

  /** Of each record what it says now about who comes with the animal. */
  Collection<Stated> clients() {
    Map<Name, Stated> last =
        statements.stream()
            .filter(stated -> stated.fact() instanceof Fact.Attended)
            .collect(
                Collectors.toMap(Name::of, stated -> stated, ClinicRecords::later, TreeMap::new));
    return last.values();
  }

  /** Statements come by day, so of one export's the later one is the visit's that came later. */
  private static Stated later(Stated one, Stated next) {
    return next.exportDate().isBefore(one.exportDate()) ? one : next;
  }

  /** The group's record under which the patient is told of: that of the latest day. */
  Optional<Sight> latest(Collection<OrganisationId> clinics) {
    return sights().stream().filter(sight -> clinics.contains(sight.clinic)).max(Sight.BY_DAY);
  }
}
