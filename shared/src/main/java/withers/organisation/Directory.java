package withers.organisation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import withers.chip.ChipNumber;
import withers.contact.Contact;
import withers.id.OrganisationId;

/**
 * The organisations of a workspace, found by id or by any of their names. Immutable; safe for
 * several threads.
 */
public final class Directory {

  /** A directory without organisations. */
  public static final Directory EMPTY = of(List.of());

  private final SortedMap<OrganisationId, Organisation> byId;
  private final Map<String, Organisation> byName;
  private final List<Organisation> registries;

  private Directory(SortedMap<OrganisationId, Organisation> byId) {
    this.byId = Collections.unmodifiableSortedMap(byId);
    this.byName = byName(byId.values());
    this.registries = ofKind(OrganisationKind.REGISTRY);
  }

  /**
   * A directory of these organisations.
   *
   * @throws IllegalArgumentException when two share an id, or a name or alias by {@link
   *     NameSpelling}
   */
  public static Directory of(Collection<Organisation> organisations) {
    SortedMap<OrganisationId, Organisation> byId = new TreeMap<>();
    for (Organisation organisation : organisations) {
      if (byId.putIfAbsent(organisation.id(), organisation) != null) {
        throw new IllegalArgumentException(
            "Expected each organisation id once, but found \"%s\" again"
                .formatted(organisation.id()));
      }
    }
    return new Directory(byId);
  }

  private static Map<String, Organisation> byName(Collection<Organisation> organisations) {
    Map<String, Organisation> byName = new HashMap<>();
    for (Organisation organisation : organisations) {
      for (String name : names(organisation)) {
        Organisation other = byName.putIfAbsent(NameSpelling.key(name), organisation);
        if (other != null && !other.equals(organisation)) {
          throw new IllegalArgumentException(
              "Expected a name of one organisation, but found \"%s\" for %s and %s"
                  .formatted(name, other.id(), organisation.id()));
        }
      }
    }
    return byName;
  }

  private static List<String> names(Organisation organisation) {
    List<String> names = new ArrayList<>(organisation.aliases());
    names.add(organisation.name());
    return names;
  }

  /** All organisations, in the order of their ids. */
  public Collection<Organisation> all() {
    return byId.values();
  }

  public Optional<Organisation> find(OrganisationId id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The organisation that has this name or alias, compared by {@link NameSpelling}. */
  public Optional<Organisation> named(String statedName) {
    return ofNameKey(NameSpelling.key(statedName));
  }

  /** The organisation that has a name or alias of this {@link NameSpelling#key}. */
  public Optional<Organisation> ofNameKey(String key) {
    return Optional.ofNullable(byName.get(key));
  }

  /** Those of a kind, in the order of their ids. */
  public List<Organisation> ofKind(OrganisationKind kind) {
    return byId.values().stream().filter(organisation -> organisation.kind() == kind).toList();
  }

  /** Foster carers and colony caretakers of an organisation; empty for an unknown one. */
  public List<Contact> carersOf(OrganisationId id) {
    return find(id).map(Organisation::carers).orElse(List.of());
  }

  /** The registries, in the order of their ids. */
  public List<Organisation> registries() {
    return registries;
  }

  /**
   * The registries that may hold this number, in the order of their ids; one without ranges may
   * hold any.
   */
  public List<Organisation> registriesFor(ChipNumber number) {
    return registries.stream().filter(registry -> mayHold(registry, number)).toList();
  }

  private static boolean mayHold(Organisation registry, ChipNumber number) {
    return registry.registers().isEmpty()
        || registry.registers().stream().anyMatch(range -> range.contains(number));
  }

  /**
   * An index of the phones and e-mail addresses of all organisations and their carers.
   *
   * @param phoneKey turns a phone as written into what is compared; equal keys mean the same phone,
   *     an empty key means that it can't be compared
   */
  public ContactIndex contactIndex(UnaryOperator<String> phoneKey) {
    return new ContactIndex(all(), phoneKey);
  }
}
