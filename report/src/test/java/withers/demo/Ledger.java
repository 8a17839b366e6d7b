package withers.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What every organisation typed about one animal, and when: the rows of any month's export follow.
 */
final class Ledger {

  private record Name(Source source, String key) {}

  private final Map<Name, Entry> entries = new LinkedHashMap<>();

  /** The record of that key, begun if it is new. */
  Entry entry(Source source, String key) {
    return entries.computeIfAbsent(new Name(source, key), name -> new Entry(source, key));
  }

  /** In the order in which they were begun. */
  Collection<Entry> entries() {
    return entries.values();
  }

  List<Entry> of(Source source) {
    return entries.values().stream().filter(entry -> entry.source == source).toList();
  }

  /** The record that the source began last. */
  Entry last(Source source) {
    List<Entry> all = of(source);
    return all.get(all.size() - 1);
  }

  /** One record of one organisation, through all that was typed over it. */
  static final class Entry {
    private final Source source;
    private final String key;
    private final List<Typed> typed = new ArrayList<>();

    private Entry(Source source, String key) {
      this.source = source;
      this.key = key;
    }

    Source source() {
      return source;
    }

    String key() {
      return key;
    }

    boolean isCalled(String name) {
      return key.equals(name);
    }

    /** Something typed on a day; what it leaves out stays as it was. */
    Typing on(LocalDate day) {
      return new Typing(day);
    }

    /** The record left the organisation's files on that day. */
    void removedOn(LocalDate day) {
      keep(new Typed(day, Optional.empty()));
    }

    /** Keeps what was typed in order of day, on one day in the order told. */
    private void keep(Typed step) {
      int at = typed.size();
      while (at > 0 && typed.get(at - 1).day.isAfter(step.day)) {
        at--;
      }
      typed.add(at, step);
    }

    /** The row as the organisation held it at the end of that day. */
    Optional<Row> asOn(LocalDate day) {
      Optional<Row> row = Optional.empty();
      for (Typed step : typed) {
        if (!step.day.isAfter(day)) {
          Row before = row.orElseGet(Row::empty);
          row = step.change.map(before::overlaidBy);
        }
      }
      return row;
    }

    /** What is being typed on one day. */
    final class Typing {
      private final LocalDate day;
      private final Map<Field, String> fields = new EnumMap<>(Field.class);
      private final Map<Role, Person> people = new EnumMap<>(Role.class);

      private Typing(LocalDate day) {
        this.day = day;
        fields.put(Field.KEY, key);
      }

      Typing put(Field field, String value) {
        fields.put(field, value);
        return this;
      }

      Typing put(Field field, LocalDate value) {
        return put(field, value.toString());
      }

      Typing put(Role role, Person person) {
        people.put(role, person);
        return this;
      }

      Typing put(Animal animal) {
        return put(Field.CHIP, animal.chip())
            .put(Field.NAME, animal.name())
            .put(Field.SPECIES, animal.species())
            .put(Field.SEX, animal.sex())
            .put(Field.BORN, animal.born());
      }

      Entry saved() {
        keep(new Typed(day, Optional.of(new Row(fields, people))));
        return Entry.this;
      }
    }
  }

  /** A change typed on a day; empty when the record was removed. */
  private record Typed(LocalDate day, Optional<Row> change) {}
}
