package withers.codec;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The wire names and compact ids of an enum's constants: explicit, so that neither renaming nor
 * reordering the enum changes a stored event.
 */
final class Constants<E extends Enum<E>> {

  /** How a constant is written: {@code id} in chunks, {@code name} in JSON. */
  record Entry<E>(int id, String name, E constant) {}

  private final String name;
  private final Class<E> type;
  private final Map<E, Entry<E>> byConstant;
  private final SortedMap<Integer, Entry<E>> byId = new TreeMap<>();

  /** The same by position: several are looked up for each event that is read. */
  private final List<Optional<E>> atId = new ArrayList<>();

  private final Map<String, Entry<E>> byName = new HashMap<>();

  private Constants(String name, Class<E> type) {
    this.name = name;
    this.type = type;
    this.byConstant = new EnumMap<>(type);
  }

  static <E extends Enum<E>> Constants<E> of(String name, Class<E> type) {
    return new Constants<>(name, type);
  }

  Constants<E> put(int id, String wireName, E constant) {
    Entry<E> entry = new Entry<>(id, wireName, constant);
    if (byId.put(id, entry) != null
        || byName.put(wireName, entry) != null
        || byConstant.put(constant, entry) != null) {
      throw new IllegalStateException("Twice in the table of %s: %s".formatted(name, entry));
    }
    while (atId.size() <= id) {
      atId.add(Optional.empty());
    }
    atId.set(id, Optional.of(constant));
    return this;
  }

  String name() {
    return name;
  }

  Class<E> type() {
    return type;
  }

  /** All constants in the order of their ids. */
  Collection<Entry<E>> entries() {
    return byId.values();
  }

  Entry<E> entry(E constant) {
    Entry<E> entry = byConstant.get(constant);
    if (entry == null) {
      throw new IllegalStateException("Not in the table of %s: %s".formatted(name, constant));
    }
    return entry;
  }

  Optional<E> withId(long id) {
    return id >= 0 && id < atId.size() ? atId.get((int) id) : Optional.empty();
  }

  Optional<E> withName(String wireName) {
    return Optional.ofNullable(byName.get(wireName)).map(Entry::constant);
  }
}
