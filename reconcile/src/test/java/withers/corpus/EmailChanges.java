package withers.corpus;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import withers.corpus.Entry.WrittenEmail;

/**
 * What happens to e-mail addresses. Domains with a slip belong to nobody: their last part does not
 * exist.
 */
final class EmailChanges {
  private static final Map<String, String> SLIPS =
      Map.of(".org", ".ogr", ".com", ".cmo", ".net", ".nte");
  private static final List<String> TAGS = List.of("+vet", "+dog", "+cat", "+pets", "+registry");

  private EmailChanges() {}

  static Entry renewed(Entry entry, Dice dice) {
    String fresh = Population.email(entry.person(), dice);
    return entry.emails().isEmpty() ? entry : entry.emails(List.of(new WrittenEmail(fresh, fresh)));
  }

  static Entry tagged(Entry entry, Dice dice) {
    String tag = dice.one(TAGS);
    return each(entry, text -> text.replace("@", tag + "@"));
  }

  static Entry otherCase(Entry entry, Dice dice) {
    boolean loud = dice.chance(50);
    return each(
        entry,
        text ->
            loud
                ? text.toUpperCase(Locale.ROOT)
                : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1));
  }

  /** The end of the domain is mistyped, or one letter before the at sign. */
  static Entry typed(Entry entry, Dice dice) {
    boolean domain = dice.chance(60);
    return each(
        entry,
        text -> {
          int at = text.indexOf('@');
          String end = text.substring(text.lastIndexOf('.'));
          return domain
              ? text.substring(0, text.lastIndexOf('.')) + SLIPS.getOrDefault(end, end)
              : Slips.typed(text.substring(0, at), dice) + text.substring(at);
        });
  }

  /** The household's address instead of the person's own. */
  static Entry family(Entry entry, Dice dice) {
    if (entry.emails().isEmpty()) {
      return entry;
    }
    Person person = entry.person();
    String name = Population.letters(person.family().get(0), person);
    String shared = "family." + name + dice.below(100) + "@example.org";
    return entry.emails(List.of(new WrittenEmail(shared, shared)));
  }

  private static Entry each(Entry entry, UnaryOperator<String> change) {
    return entry.emails(
        entry.emails().stream()
            .map(email -> new WrittenEmail(email.address(), change.apply(email.text())))
            .toList());
  }
}
