package withers.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.corpus.Names.Written;

/** What happens to family names. */
final class FamilyNames {
  private static final Pattern PARTICLE =
      Pattern.compile(
          "(?i)(van der|van de|van den|van|von|zu|de la|de|del|du|des|di|della|da|dos|do|"
              + "bin|binti|b\\.|bt\\.|ibn|abu|al|el|le|ter|ten|ben)[ -](?=\\p{L})");

  private FamilyNames() {}

  static Entry typed(Entry entry, Dice dice) {
    return one(entry, text -> Slips.typed(text, dice), dice);
  }

  static Entry heard(Entry entry, Dice dice) {
    return one(entry, text -> Slips.heard(text, dice), dice);
  }

  private static Entry one(Entry entry, UnaryOperator<String> change, Dice dice) {
    if (entry.names().family().isEmpty()) {
      return entry;
    }
    List<Written> family = new ArrayList<>(entry.names().family());
    int at = dice.below(family.size());
    family.set(at, family.get(at).text(change.apply(family.get(at).text())));
    return entry.names(entry.names().family(family));
  }

  /**
   * Dropped, joined to the name, or written with capitals: van der Meer, Meer, Vandermeer, Van Der
   * Meer.
   */
  static Entry particle(Entry entry, Dice dice) {
    int how = dice.below(3);
    return one(entry, text -> particle(text, how), dice);
  }

  private static String particle(String text, int how) {
    Matcher particle = PARTICLE.matcher(text);
    if (!particle.lookingAt()) {
      return text;
    }
    String rest = text.substring(particle.end());
    return switch (how) {
      case 0 -> rest;
      case 1 -> capital(particle.group().replaceAll("[ .-]", "") + rest.toLowerCase(Locale.ROOT));
      default -> capitals(particle.group()) + rest;
    };
  }

  private static String capitals(String words) {
    StringBuilder capitals = new StringBuilder();
    for (String word : words.split("(?<=[ -])")) {
      capitals.append(capital(word));
    }
    return capitals.toString();
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  /** One of two is left; half the time the first. */
  static Entry cut(Entry entry, Dice dice) {
    List<Written> family = entry.names().family();
    if (family.size() < 2) {
      return entry;
    }
    return entry.names(entry.names().family(List.of(dice.one(family))));
  }

  /** Another hyphen, space, or a joined word. */
  static Entry joinedOtherwise(Entry entry, Dice dice) {
    Names names = entry.names();
    return names.family().size() < 2
        ? entry
        : entry.names(names.join(names.join().equals("-") ? " " : dice.chance(80) ? "-" : ""));
  }

  /** The name of a spouse instead of the old one, or beside it; men seldom. */
  static Entry married(Entry entry, Dice dice) {
    if (entry.names().family().isEmpty() || !entry.person().female() && dice.chance(75)) {
      return entry;
    }
    return dice.chance(70) ? renamed(entry, dice) : withSpouse(entry, dice);
  }

  private static Entry withSpouse(Entry entry, Dice dice) {
    Written own = entry.names().family().get(0);
    Names both = entry.names().family(List.of(own, spouse(entry.person(), dice)));
    return entry.names(both.join(dice.chance(70) ? "-" : " "));
  }

  /** Nothing of the old family name is left. */
  static Entry renamed(Entry entry, Dice dice) {
    List<Written> taken = List.of(spouse(entry.person(), dice));
    return entry.names().family().isEmpty() ? entry : entry.names(entry.names().family(taken));
  }

  private static Written spouse(Person person, Dice dice) {
    Name name = person.culture().formOf(person.culture().family(dice), person.female());
    return person.family().contains(name)
        ? spouse(person, dice)
        : Clerk.written(List.of(name), person).get(0);
  }
}
