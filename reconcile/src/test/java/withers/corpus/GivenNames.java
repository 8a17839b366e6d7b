package withers.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import withers.corpus.Names.Written;

/** What happens to given names. */
final class GivenNames {
  private static final Map<String, List<String>> SHORT = Spoken.read("short-forms.txt");
  private static final List<String> CONNECTORS = List.of("&", "and", "+", "und", "et", "y", "e");

  private GivenNames() {}

  static Entry typed(Entry entry, Dice dice) {
    return first(entry, text -> Slips.typed(text, dice));
  }

  static Entry heard(Entry entry, Dice dice) {
    return first(entry, text -> Slips.heard(text, dice));
  }

  private static Entry first(Entry entry, UnaryOperator<String> change) {
    Names names = entry.names();
    if (names.given().isEmpty() || !names.given().get(0).whole()) {
      return entry;
    }
    List<Written> given = new ArrayList<>(names.given());
    given.set(0, given.get(0).text(change.apply(given.get(0).text())));
    return entry.names(names.given(given));
  }

  static Entry shortened(Entry entry, Dice dice) {
    return first(entry, text -> dice.one(SHORT.getOrDefault(text, List.of(text))));
  }

  /** With or without a full stop, the middle name's as well or not. */
  static Entry initials(Entry entry, Dice dice) {
    String stop = dice.chance(50) ? "." : "";
    List<Written> initials =
        entry.names().given().stream()
            .map(name -> new Written(name.name(), initial(name.text()) + stop, false))
            .toList();
    return entry.names(entry.names().given(initials));
  }

  private static String initial(String name) {
    return name.substring(0, name.offsetByCodePoints(0, 1));
  }

  /** Dropped where it is written, else added, as a name or an initial. */
  static Entry middle(Entry entry, Dice dice) {
    List<Written> given = entry.names().given();
    Person person = entry.person();
    if (given.size() > 1) {
      return entry.names(entry.names().given(given.subList(0, 1)));
    }
    if (given.isEmpty() || person.given().size() < 2 || !given.get(0).whole()) {
      return entry;
    }
    List<Written> both = new ArrayList<>(given);
    Written middle = Clerk.written(person.given().subList(1, 2), person).get(0);
    both.add(dice.chance(60) ? middle : middle.text(initial(middle.text())));
    return entry.names(entry.names().given(both));
  }

  /** A partner is named beside: {@code Ann & Joe Smith}, or {@code Smith, A. and J.}. */
  static Entry couple(Entry entry, Dice dice) {
    Names names = entry.names();
    if (names.given().isEmpty() || !names.with().isEmpty()) {
      return entry;
    }
    Person person = entry.person();
    Name partner = dice.byRank(person.culture().given(!person.female()));
    String written = partner.spelled(person.spelling());
    String connector = dice.one(CONNECTORS) + " ";
    if (dice.chance(40)) {
      Entry couple = initials(entry, dice).layout(Entry.Layout.FAMILY_COMMA);
      return couple.names(couple.names().with(connector + initial(written) + "."));
    }
    return dice.chance(50)
        ? entry.names(names.with(connector + written))
        : entry.names(names.before(written + " " + connector.strip()));
  }
}
