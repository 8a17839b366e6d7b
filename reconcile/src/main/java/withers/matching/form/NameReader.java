package withers.matching.form;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.Contact;

/** Reads names. */
final class NameReader {
  private final NameWords words = new NameWords();

  List<PersonName> names(Contact contact) {
    List<NameWord> given = words(contact.givenName());
    List<NameWord> family = words(contact.familyName());
    if (contact.name().isEmpty()) {
      return given.isEmpty() && family.isEmpty() ? List.of() : List.of(stated(given, family));
    }
    List<NameWord> all = words(contact.name());
    return all.isEmpty() ? List.of() : List.of(usual(all));
  }

  private PersonName stated(List<NameWord> given, List<NameWord> family) {
    return name(
        reading(given, List.of(), family),
        reading(family, List.of(), given),
        PersonName.Order.STATED);
  }

  private PersonName usual(List<NameWord> all) {
    int last = all.size() - 1;
    if (last == 0) {
      Reading only = reading(List.of(), all, List.of());
      return name(only, only, PersonName.Order.USUAL);
    }
    List<NameWord> first = all.subList(0, 1);
    List<NameWord> middle = all.subList(1, last);
    List<NameWord> end = all.subList(last, last + 1);
    return name(reading(first, middle, end), reading(end, middle, first), PersonName.Order.USUAL);
  }

  private static PersonName name(Reading straight, Reading swapped, PersonName.Order order) {
    return new PersonName(
        straight,
        swapped,
        order,
        PersonName.Generation.NOT_STATED,
        PersonName.Sex.NOT_STATED,
        false);
  }

  private Reading reading(List<NameWord> given, List<NameWord> either, List<NameWord> family) {
    return new Reading(given, either, family, "", joined(given), joined(family));
  }

  private NameWord joined(List<NameWord> parts) {
    return words.of(parts.stream().map(NameWord::text).collect(Collectors.joining()));
  }

  private List<NameWord> words(String name) {
    return Stream.of(Fold.of(name).split("[\\s,-]+"))
        .map(Fold::lettersAndDigits)
        .filter(word -> !word.isEmpty())
        .map(words::of)
        .toList();
  }
}
