package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import withers.contact.Contact;

/** Reads the name of a contact: whom it names, and which organisation. Safe for several threads. */
final class NameReader {
  private final NameMaker maker;

  NameReader(NameWords words) {
    this.maker = new NameMaker(words);
  }

  /**
   * What a name names.
   *
   * @param organisation its key, or empty
   */
  record Named(List<PersonName> people, String organisation) {
    static final Named NOBODY = new Named(List.of(), "");

    private Named orElse(Named other) {
      return new Named(
          people.isEmpty() ? other.people : people,
          organisation.isEmpty() ? other.organisation : organisation);
    }
  }

  /**
   * @param whole the tokens of the contact's whole name
   */
  Named read(Contact contact, List<Token> whole) {
    boolean columns = !contact.givenName().isEmpty() && !contact.familyName().isEmpty();
    if (contact.name().isEmpty() && columns) {
      return columns(contact, whole);
    }
    return piece(contact.fullName(), whole);
  }

  static boolean isPlaceholder(List<Token> tokens) {
    if (Lists.any(tokens, NameReader::isInitial)) {
      return false;
    }
    List<Token> words = PersonReader.withoutSigns(tokens);
    return words.isEmpty()
        || NameVocabulary.PLACEHOLDERS.mayBegin(words.get(0).text())
            && NameVocabulary.PLACEHOLDERS.has(Token.words(words, " "));
  }

  private static boolean isInitial(Token token) {
    return token.text().length() == 1 && token.endsWithFullStop();
  }

  private Named columns(Contact contact, List<Token> whole) {
    List<Token> given = NameTokens.of(contact.givenName());
    List<Token> family = NameTokens.of(contact.familyName());
    if (isPlaceholder(whole) || isPlaceholder(given) && isPlaceholder(family)) {
      return Named.NOBODY;
    }
    if (isPlaceholder(given) || isPlaceholder(family)) {
      String only = isPlaceholder(given) ? contact.familyName() : contact.givenName();
      return piece(only, Token.of(only));
    }
    String full = contact.fullName();
    if (NameVocabulary.CARE_OF.matcher(full).find() || Organisations.isOne(whole)) {
      return piece(full, whole);
    }
    Asides first = Asides.of(given);
    Asides second = Asides.of(family);
    List<Draft> people = People.columns(first.name(), second.name());
    return named(people, Lists.joined(first.asides(), second.asides()));
  }

  private Named piece(String name, List<Token> whole) {
    Matcher careOf = NameVocabulary.CARE_OF.matcher(name);
    if (careOf.find()) {
      Named before = segments(name.substring(0, careOf.start()));
      Named behind = segments(name.substring(careOf.end()));
      return before.people.isEmpty()
          ? before.orElse(behind)
          : before.orElse(new Named(List.of(), behind.organisation));
    }
    return segments(name, whole);
  }

  private Named segments(String name) {
    return segments(name, Token.of(name));
  }

  private Named segments(String name, List<Token> whole) {
    List<Token> tokens = NameTokens.of(name);
    if (isPlaceholder(whole) || isPlaceholder(tokens)) {
      return Named.NOBODY;
    }
    Asides asides = Asides.of(tokens);
    if (!Organisations.isOne(asides.name())) {
      return asides.name().isEmpty()
          ? named(List.of(), asides.asides())
          : named(People.piece(asides.name()), asides.asides());
    }
    return besideAnOrganisation(asides);
  }

  /** {@code Ann Smith, Paws Rescue}: people are in parts that hold no word of an organisation. */
  private Named besideAnOrganisation(Asides asides) {
    List<List<Token>> parts = parts(asides.name());
    List<List<Token>> people = parts.stream().filter(part -> !Organisations.isOne(part)).toList();
    List<Token> organisation =
        parts.stream().filter(Organisations::isOne).flatMap(List::stream).toList();
    List<Token> name = withCommas(people);
    if (name.size() < 2 || people.size() > 2 || organisation.isEmpty()) {
      return new Named(List.of(), Organisations.key(asides.name()));
    }
    Named person = named(People.piece(name), asides.asides());
    return new Named(person.people, Organisations.key(organisation));
  }

  private static List<Token> withCommas(List<List<Token>> parts) {
    List<Token> tokens = new ArrayList<>();
    for (List<Token> part : parts) {
      if (!tokens.isEmpty()) {
        tokens.add(new Token(",", ",", false));
      }
      tokens.addAll(part);
    }
    return tokens;
  }

  private static List<List<Token>> parts(List<Token> tokens) {
    List<List<Token>> parts = new ArrayList<>();
    parts.add(new ArrayList<>());
    for (Token token : tokens) {
      if (token.is(',') || token.is(';') || token.is('|') || token.is('/')) {
        parts.add(new ArrayList<>());
      } else {
        parts.get(parts.size() - 1).add(token);
      }
    }
    parts.removeIf(List::isEmpty);
    return parts;
  }

  private Named named(List<Draft> people, List<List<Token>> asides) {
    List<Draft> changed = new ArrayList<>(people);
    String organisation = "";
    for (List<Token> aside : asides) {
      List<Token> words = PersonReader.withoutSigns(aside);
      if (changed.isEmpty() || !changeFirst(words, changed)) {
        organisation = isNothing(words) ? organisation : Organisations.key(words);
      }
    }
    return new Named(changed.stream().map(maker::name).toList(), organisation);
  }

  private static boolean isNothing(List<Token> words) {
    return Lists.all(words, word -> NameVocabulary.REMARKS.has(word.text()));
  }

  /** A generation, a name by birth or a name to be called by; of whom it is said, is the first. */
  private static boolean changeFirst(List<Token> aside, List<Draft> people) {
    if (aside.isEmpty()) {
      return true;
    }
    Draft first = people.get(0);
    int born = NameVocabulary.BORN.run(aside, 0);
    int called = NameVocabulary.CALLED.run(aside, 0);
    PersonName.Generation generation = Trimmed.generation(aside);
    if (generation != PersonName.Generation.NOT_STATED) {
      people.set(0, first.with(generation, first.sex()));
    } else if (born > 0 && born < aside.size()) {
      people.set(0, first.withFamilyNames(Lists.from(aside, born)));
    } else if (isGiven(Lists.from(aside, called))) {
      people.set(0, first.withGivenNames(Lists.from(aside, called)));
    } else {
      return false;
    }
    return true;
  }

  private static boolean isGiven(List<Token> words) {
    return words.size() == 1 && NameTable.GIVEN.knows(words.get(0).text());
  }
}
