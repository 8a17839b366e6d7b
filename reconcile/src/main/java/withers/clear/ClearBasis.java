package withers.clear;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.history.Source;
import withers.history.Sources;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.source.SourceKind;

/**
 * What animals were judged by, beside what is said of themselves: the day, the exports that were
 * heard, and what they told of their sources.
 *
 * @param heard the imports that were heard
 * @param newest the day up to which each registry had exported, by {@link
 *     Sources#newestOfRegistries}
 */
public record ClearBasis(
    LocalDate asOf,
    Set<ImportId> heard,
    Map<SourceId, Traits> sources,
    Map<OrganisationId, LocalDate> newest) {

  /**
   * What judges ask of a source, but for the dates of its exports.
   *
   * @param filled names of the fields that are really filled in
   */
  public record Traits(OrganisationId organisation, SourceKind kind, Set<String> filled) {
    public Traits {
      filled = Set.copyOf(filled);
    }

    private static Traits of(Source source) {
      return new Traits(
          source.organisation(),
          source.description().kind(),
          source.description().coverage().filled());
    }
  }

  public ClearBasis {
    heard = Set.copyOf(heard);
    sources = Map.copyOf(sources);
    newest = Map.copyOf(newest);
  }

  /** What a run judges by; empty when it leaves out what is known today. */
  public static Optional<ClearBasis> of(LogSnapshot log, Sources sources) {
    if (sources.scope().knownBy().isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        new ClearBasis(
            sources.scope().asOf(),
            log.markers().stream()
                .filter(sources::hears)
                .map(ImportMarker::id)
                .collect(Collectors.toSet()),
            sources.all().stream()
                .collect(Collectors.toMap(one -> one.description().id(), Traits::of)),
            sources.newestOfRegistries()));
  }

  /**
   * Whether an animal that was clear by this is clear by that, too, if nothing new is said of it.
   * Days that pass make nobody's registration worse, nor do registries that export again; a source
   * that became another, or a registry that lags behind what it was, may.
   */
  public boolean holdsFor(ClearBasis later) {
    return !later.asOf.isBefore(asOf)
        && later.heard.containsAll(heard)
        && later.sources.entrySet().containsAll(sources.entrySet())
        && later.newest.keySet().equals(newest.keySet())
        && newest.entrySet().stream()
            .noneMatch(one -> later.isBehind(one.getKey(), one.getValue()));
  }

  private boolean isBehind(OrganisationId registry, LocalDate day) {
    LocalDate exported = newest.get(registry);
    return exported != null && exported.isBefore(day);
  }

  /** Whether this judges a day that is not before that one, and not the same by the same. */
  public boolean isNews(ClearBasis before) {
    return !asOf.isBefore(before.asOf) && !equals(before);
  }

  /** Whether an import was not heard then. */
  public boolean isNew(ImportMarker marker) {
    return !heard.contains(marker.id());
  }

  void write(Bytes out) {
    out.signed(asOf.toEpochDay());
    out.unsigned(heard.size());
    heard.stream().map(ImportId::value).sorted().forEach(id -> write(id, out));
    out.unsigned(sources.size());
    new TreeMap<>(sources).forEach((id, traits) -> write(id, traits, out));
    out.unsigned(newest.size());
    new TreeMap<>(newest).forEach((registry, day) -> write(registry, day, out));
  }

  private static void write(UUID id, Bytes out) {
    out.eight(id.getMostSignificantBits());
    out.eight(id.getLeastSignificantBits());
  }

  private static void write(SourceId id, Traits traits, Bytes out) {
    out.text(id.value());
    out.text(traits.organisation.value());
    out.text(traits.kind.name());
    out.unsigned(traits.filled.size());
    new TreeSet<>(traits.filled).forEach(out::text);
  }

  private static void write(OrganisationId registry, LocalDate day, Bytes out) {
    out.text(registry.value());
    out.signed(day.toEpochDay());
  }

  static ClearBasis read(ByteReader in) {
    LocalDate asOf = LocalDate.ofEpochDay(in.signed());
    Set<ImportId> heard = new HashSet<>();
    for (int left = in.length("imports"); left > 0; left--) {
      heard.add(new ImportId(new UUID(in.eight(), in.eight())));
    }
    Map<SourceId, Traits> sources = new HashMap<>();
    for (int left = in.length("sources"); left > 0; left--) {
      sources.put(new SourceId(in.text()), traits(in));
    }
    Map<OrganisationId, LocalDate> newest = new HashMap<>();
    for (int left = in.length("registries"); left > 0; left--) {
      newest.put(new OrganisationId(in.text()), LocalDate.ofEpochDay(in.signed()));
    }
    return new ClearBasis(asOf, heard, sources, newest);
  }

  private static Traits traits(ByteReader in) {
    OrganisationId organisation = new OrganisationId(in.text());
    SourceKind kind = SourceKind.valueOf(in.text());
    Set<String> filled = new HashSet<>();
    for (int left = in.length("fields"); left > 0; left--) {
      filled.add(in.text());
    }
    return new Traits(organisation, kind, filled);
  }
}
