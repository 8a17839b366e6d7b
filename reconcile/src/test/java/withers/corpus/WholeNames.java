package withers.corpus;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import withers.corpus.Entry.Layout;
import withers.corpus.Names.Written;

/** What happens to names as a whole. */
final class WholeNames {
  private static final List<String> ORGANISATIONS =
      List.of(
          " (Saltmere Cat Friends)",
          " c/o Quayside Vets",
          ", Old Mill Kennels",
          " - Tierhilfe Grünhafen",
          " / Associação Patas do Moinho",
          " (staff)");
  private static final Map<String, List<String>> MEN =
      Map.of(
          "DE", List.of("Herr", "Herrn", "Dr."),
          "FR", List.of("M.", "Monsieur", "Dr"),
          "ES", List.of("Sr.", "D.", "Don"),
          "PT", List.of("Sr.", "Dr.", "Exmo. Sr."),
          "IT", List.of("Sig.", "Dott."),
          "PL", List.of("Pan", "dr"));
  private static final Map<String, List<String>> WOMEN =
      Map.of(
          "DE", List.of("Frau", "Fr.", "Dr."),
          "FR", List.of("Mme", "Madame", "Mlle"),
          "ES", List.of("Sra.", "Dña.", "Doña"),
          "PT", List.of("Sra.", "D.", "Dra."),
          "IT", List.of("Sig.ra", "Dott.ssa"),
          "PL", List.of("Pani", "dr"));
  private static final Map<String, String> FAMILIES =
      Map.of("DE", "Familie", "FR", "Famille", "ES", "Familia", "PT", "Família", "IT", "Famiglia");

  private WholeNames() {}

  static Entry title(Entry entry, Dice dice) {
    boolean female = entry.person().female();
    List<String> english = female ? List.of("Mrs", "Ms", "Miss", "Dr") : List.of("Mr", "Mr.", "Dr");
    Map<String, List<String>> titles = female ? WOMEN : MEN;
    String title = dice.one(titles.getOrDefault(entry.person().country(), english));
    Names names = entry.names();
    return names.isStated() && names.before().isEmpty() ? entry.names(names.before(title)) : entry;
  }

  /** In columns the one in the other's place, else in the other order without a comma. */
  static Entry swapped(Entry entry, Dice dice) {
    if (!entry.names().isStated()) {
      return entry;
    }
    return switch (entry.layout()) {
      case COLUMNS -> entry.layout(Layout.COLUMNS_SWAPPED);
      case GIVEN_FIRST, FAMILY_COMMA -> entry.layout(Layout.FAMILY_FIRST);
      default -> entry.layout(Layout.GIVEN_FIRST);
    };
  }

  static Entry withoutAccents(Entry entry, Dice dice) {
    Entry plain = entry.names(entry.names().texts(Folding::withoutAccents));
    return entry
        .address()
        .map(address -> plain.address(address.texts(Folding::withoutAccents)))
        .orElse(plain);
  }

  static Entry capitals(Entry entry, Dice dice) {
    Entry loud = entry.names(entry.names().capitals());
    return entry.address().isPresent() && dice.chance(50)
        ? loud.address(entry.address().orElseThrow().texts(text -> text.toUpperCase(Locale.ROOT)))
        : loud;
  }

  /** Names that can be spelled otherwise in the same script are. */
  static Entry otherSpelling(Entry entry, Dice dice) {
    int first = entry.person().culture().usualSpelling();
    Names names = entry.names();
    return entry.person().spelling() < first
        ? entry
        : entry.names(
            names
                .given(spelled(names.given(), first, dice))
                .family(spelled(names.family(), first, dice)));
  }

  private static List<Written> spelled(List<Written> names, int first, Dice dice) {
    return names.stream()
        .map(
            name -> {
              int count = name.name().spellings().size();
              boolean may = name.whole() && count > first + 1 && dice.chance(70);
              int spelling = may ? first + dice.below(count - first) : -1;
              return may ? name.text(name.name().spelled(spelling)) : name;
            })
        .toList();
  }

  /** From the language's own script to Latin letters, or back. */
  static Entry otherScript(Entry entry, Dice dice) {
    Person person = entry.person();
    if (!person.culture().script()) {
      return entry;
    }
    int other = 1 - person.spelling();
    Names names = entry.names();
    return entry.names(
        names.given(inScript(names.given(), other)).family(inScript(names.family(), other)));
  }

  private static List<Written> inScript(List<Written> names, int spelling) {
    return names.stream()
        .map(name -> name.whole() ? name.text(name.name().spelled(spelling)) : name)
        .toList();
  }

  /** Only the family is named: The Smith Family, Familie Schmidt. */
  static Entry familyOnly(Entry entry, Dice dice) {
    if (entry.names().family().isEmpty()) {
      return entry;
    }
    String word = FAMILIES.getOrDefault(entry.person().country(), "Family");
    return entry.names(entry.names().given(List.of()).before(word).with(""));
  }

  static Entry organisation(Entry entry, Dice dice) {
    boolean free = entry.names().isStated() && entry.names().after().isEmpty();
    return free ? entry.names(entry.names().after(dice.one(ORGANISATIONS))) : entry;
  }
}
