package withers.demo;

import java.util.EnumMap;
import java.util.Map;

/** One row of a source, before it is put into that source's own columns and words. */
record Row(Map<Field, String> fields, Map<Role, Person> people) {

  Row {
    fields = new EnumMap<>(fields.isEmpty() ? new EnumMap<>(Field.class) : new EnumMap<>(fields));
    people = people.isEmpty() ? new EnumMap<>(Role.class) : new EnumMap<>(people);
  }

  static Row empty() {
    return new Row(Map.of(), Map.of());
  }

  String get(Field field) {
    return fields.getOrDefault(field, "");
  }

  Person who(Role role) {
    return people.getOrDefault(role, Person.NOBODY);
  }

  /** This row with what the later one states anew. */
  Row overlaidBy(Row later) {
    Row merged = new Row(fields, people);
    merged.fields.putAll(later.fields);
    merged.people.putAll(later.people);
    return merged;
  }
}
