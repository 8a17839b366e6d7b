package withers.corpus;

import java.util.List;
import java.util.Map;

/**
 * How people of one language are named; the lines of names.txt.
 *
 * @param script whether names have a first spelling in a script of their own
 * @param habits percent by habit
 */
record Culture(
    String id,
    int share,
    List<String> countries,
    boolean script,
    int ownScript,
    List<Name> families,
    int rare,
    List<String> rareBeginnings,
    List<String> rareEndings,
    List<Name> female,
    List<Name> male,
    List<Name> middles,
    List<String> particles,
    List<String> feminine,
    Map<String, Integer> habits) {

  int habit(String name) {
    return habits.getOrDefault(name, 0);
  }

  List<Name> given(boolean isFemale) {
    return isFemale ? female : male;
  }

  /**
   * The spelling of most of its people: the first, or where that is in a script of their own, the
   * second.
   */
  int usualSpelling() {
    return script ? 1 : 0;
  }

  Name family(Dice dice) {
    return dice.chance(rare) ? rareFamily(dice) : dice.byRank(families);
  }

  private Name rareFamily(Dice dice) {
    String name = dice.one(rareBeginnings) + dice.one(rareEndings);
    boolean withParticle = !particles.isEmpty() && dice.chance(habit("particle"));
    return new Name(List.of(withParticle ? dice.one(particles) + " " + name : name));
  }

  /** A family name or patronymic in the form that a man or woman bears. */
  Name formOf(Name name, boolean isFemale) {
    return isFemale && !feminine.isEmpty()
        ? new Name(name.spellings().stream().map(this::feminine).toList())
        : name;
  }

  private String feminine(String masculine) {
    for (String rule : feminine) {
      String ending = rule.substring(0, rule.indexOf('>'));
      String other = rule.substring(rule.indexOf('>') + 1);
      if (ending.endsWith(" ") && masculine.startsWith(ending)) {
        return other + masculine.substring(ending.length());
      }
      if (!ending.endsWith(" ") && masculine.endsWith(ending)) {
        return masculine.substring(0, masculine.length() - ending.length()) + other;
      }
    }
    return masculine;
  }
}
