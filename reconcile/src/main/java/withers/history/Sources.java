package withers.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.source.OwnSources;
import withers.source.SourceDescription;

/** The sources whose exports are heard in a scope. Immutable; safe for several threads. */
public final class Sources {

  /** Days without an export after which nobody waits for a source any more (our judgement). */
  private static final int WAITED_DAYS = 365;

  private final Scope scope;
  private final SortedMap<SourceId, Source> sources;
  private final Map<SourceId, Source> byId;
  private final Map<OrganisationId, List<Source>> registries = new HashMap<>();

  private Sources(Scope scope, SortedMap<SourceId, Source> sources) {
    this.scope = scope;
    this.sources = sources;
    this.byId = new HashMap<>(sources); // asked for every statement
    sources.values().stream().filter(Source::isRegistry).forEach(this::addRegistry);
  }

  private void addRegistry(Source source) {
    registries.computeIfAbsent(source.organisation(), o -> new ArrayList<>()).add(source);
  }

  /**
   * The sources that these markers tell of.
   *
   * @param markers all committed markers, in the order of their commits
   */
  public static Sources of(Collection<ImportMarker> markers, Scope scope) {
    Map<SourceId, List<ImportMarker>> chains = new HashMap<>();
    for (ImportMarker marker : markers) {
      if (hears(scope, marker)) {
        chains.computeIfAbsent(marker.chain(), chain -> new ArrayList<>()).add(marker);
      }
    }
    SortedMap<SourceId, Source> sources = new TreeMap<>();
    chains.forEach((chain, heard) -> sources.put(chain, Source.of(heard)));
    return new Sources(scope, sources);
  }

  private static boolean hears(Scope scope, ImportMarker marker) {
    Optional<SourceDescription> source = marker.source();
    return source.isPresent()
        && scope.hears(marker.exportDate())
        && !(Source.isRegistry(source.get()) && marker.exportDate().isAfter(scope.asOf()));
  }

  public Scope scope() {
    return scope;
  }

  /** Whether an import can hold statements that are heard. */
  public boolean hears(ImportMarker marker) {
    return hears(scope, marker);
  }

  /** Whether a statement is heard: some imports state anew what later exports said. */
  boolean hears(Stated stated) {
    return scope.hears(stated.exportDate())
        && !(stated.exportDate().isAfter(scope.asOf()) && get(stated.source()).isRegistry());
  }

  /** All, in the order of their ids. */
  public Collection<Source> all() {
    return sources.values();
  }

  /**
   * The day up to which each registry has exported: by several sources, the day of the one that
   * lags behind; none for those that never do.
   */
  public Map<OrganisationId, LocalDate> newestOfRegistries() {
    Map<OrganisationId, LocalDate> newest = new HashMap<>();
    registries.forEach((id, some) -> newest.put(id, leastNew(some)));
    return newest;
  }

  private static LocalDate leastNew(List<Source> sources) {
    return sources.stream().map(Source::newest).min(LocalDate::compareTo).orElseThrow();
  }

  /**
   * Whether a further export of it is to be expected, so that what it does not say may only be
   * missing. Nobody waits for look-ups, which are written down when somebody asked.
   */
  public boolean isWaitedFor(Source source) {
    return !source.newest().isBefore(scope.asOf().minusDays(WAITED_DAYS))
        && !source.description().id().equals(OwnSources.LOOK_UPS);
  }

  /**
   * The source of a statement that is heard.
   *
   * @throws IllegalArgumentException when no marker names it
   */
  public Source get(SourceId id) {
    Source source = byId.get(id);
    if (source == null) {
      throw new IllegalArgumentException("Expected a source with a marker, but found " + id);
    }
    return source;
  }

  /** The sources that send a registry's contacts; empty for one that never exports. */
  public List<Source> ofRegistry(OrganisationId registry) {
    return List.copyOf(registries.getOrDefault(registry, List.of()));
  }
}
