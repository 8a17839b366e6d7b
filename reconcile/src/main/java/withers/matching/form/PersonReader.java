package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reads one person's name, written in one piece or in two columns. */
final class PersonReader {
  private static final List<String> PATRONYMICS =
      List.of(
          "ovich", "evich", "ovych", "evych", "owitsch", "ewitsch", "ovic", "ovna", "evna", "ivna",
          "owna", "ewna");

  private PersonReader() {}

  /** A name in two columns, titles and generation anywhere in them. */
  static Draft columns(List<Token> given, List<Token> family) {
    Trimmed first = Trimmed.of(given);
    Trimmed second = Trimmed.of(family);
    List<Token> names = withoutSigns(first.tokens());
    int end = endWithoutParticles(names);
    List<Token> all = Lists.joined(Lists.from(names, end), withoutSigns(second.tokens()));
    Parts parts = family(names.subList(0, end), List.of(), all);
    PersonName.Generation generation =
        second.generation() == PersonName.Generation.NOT_STATED
            ? first.generation()
            : second.generation();
    PersonName.Sex sex = first.sex() == PersonName.Sex.NOT_STATED ? second.sex() : first.sex();
    return Draft.stated(parts).with(generation, sex);
  }

  /** A name in one piece. */
  static Draft piece(List<Token> tokens) {
    Trimmed trimmed = Trimmed.of(tokens);
    if (isWholeFamily(trimmed.tokens())) {
      return family(withoutFamilyWord(trimmed.tokens()));
    }
    Draft draft = born(trimmed.tokens());
    boolean onlyFamily = trimmed.titled() && draft.straight().family().isEmpty();
    Draft sure = onlyFamily ? onlyFamily(draft) : draft;
    return sure.and(trimmed.generation(), trimmed.sex());
  }

  private static Draft onlyFamily(Draft draft) {
    return Draft.stated(family(List.of(), List.of(), draft.straight().either()));
  }

  private static boolean isWholeFamily(List<Token> tokens) {
    return Lists.any(tokens, PersonReader::isFamilyWord);
  }

  private static boolean isFamilyWord(Token token) {
    return NameVocabulary.WHOLE_FAMILY.has(token.text());
  }

  private static List<Token> withoutFamilyWord(List<Token> tokens) {
    return tokens.stream()
        .filter(token -> !isFamilyWord(token) && !token.text().equals("the"))
        .toList();
  }

  private static Draft family(List<Token> tokens) {
    List<Token> words = withoutSigns(tokens);
    Parts parts = family(List.of(), List.of(), words);
    boolean alone = parts.family().size() == 1 || groups(words).size() == 1;
    return alone ? Draft.stated(parts).ofWholeFamily() : born(tokens);
  }

  /** {@code Anna Smith née Brown}: both are family names of hers. */
  private static Draft born(List<Token> tokens) {
    for (int i = 1; i < tokens.size() - 1; i++) {
      int length = NameVocabulary.BORN.run(tokens, i);
      if (length > 0 && i + length < tokens.size()) {
        List<Token> before = withoutSigns(Lists.from(tokens, i + length));
        return ordered(tokens.subList(0, i)).withFamilyNames(before);
      }
    }
    return ordered(tokens);
  }

  private static Draft ordered(List<Token> tokens) {
    for (int i = 1; i < tokens.size() - 1; i++) {
      if (tokens.get(i).is(',')) {
        List<Token> behind = withoutSigns(Lists.from(tokens, i + 1));
        return columns(behind, tokens.subList(0, i));
      }
    }
    return spaced(withoutSigns(tokens));
  }

  private static Draft spaced(List<Token> tokens) {
    List<List<Token>> groups = groups(tokens);
    if (groups.size() < 2) {
      return EastAsian.unspaced(tokens).orElseGet(() -> Draft.usual(Parts.unknown(tokens)));
    }
    int capitals = capitalsFirst(groups);
    if (capitals > 0) {
      return stated(groups, capitals);
    }
    int end = capitalsLast(groups);
    if (end > 0) {
      Parts parts = family(flat(groups.subList(0, end)), List.of(), flat(Lists.from(groups, end)));
      return Draft.stated(parts);
    }
    return startsWithFamily(groups) ? familyFirst(groups) : givenFirst(groups);
  }

  private static Draft stated(List<List<Token>> groups, int end) {
    return Draft.stated(
        family(flat(Lists.from(groups, end)), List.of(), flat(groups.subList(0, end))));
  }

  private static Draft familyFirst(List<List<Token>> groups) {
    int end = endOfFamily(groups);
    Parts straight = family(flat(Lists.from(groups, end)), List.of(), flat(groups.subList(0, end)));
    return Draft.of(straight, givenFirstParts(groups), PersonName.Order.USUAL);
  }

  private static Draft givenFirst(List<List<Token>> groups) {
    Parts straight = givenFirstParts(groups);
    int end = endOfFamily(groups);
    int last = groups.size() - 1;
    Parts swapped =
        end > last
            ? straight.swapped()
            : family(
                groups.get(last), flat(groups.subList(end, last)), flat(groups.subList(0, end)));
    return Draft.of(straight, swapped, PersonName.Order.USUAL);
  }

  private static Parts givenFirstParts(List<List<Token>> groups) {
    int last = groups.size() - 1;
    boolean eastern = groups.size() > 2 && isEastern(groups.get(last));
    int start = last;
    while (start > 1 && isParticle(groups.get(start - 1))) {
      start--;
    }
    List<Token> given = new ArrayList<>(groups.get(0));
    List<Token> either = new ArrayList<>();
    for (List<Token> group : groups.subList(1, start)) {
      boolean sure = eastern || isInitial(group.get(0)) || isPatronymic(group);
      if (sure || !isParticle(group)) {
        (sure ? given : either).addAll(group);
      }
    }
    return family(given, either, flat(Lists.from(groups, start)));
  }

  /** How many groups a family name at the beginning has: particles, and one more. */
  private static int endOfFamily(List<List<Token>> groups) {
    int end = 0;
    while (end < groups.size() - 2 && isParticle(groups.get(end)) && isSmall(groups.get(end))) {
      end++;
    }
    return end + 1;
  }

  private static boolean startsWithFamily(List<List<Token>> groups) {
    List<Token> first = groups.get(0);
    List<Token> last = groups.get(groups.size() - 1);
    if (isInitial(last.get(0)) && !isInitial(first.get(0))) {
      return true;
    }
    if (isParticle(first) && isSmall(first)) {
      return groups.size() > 2;
    }
    boolean given = NameTable.GIVEN.knows(key(first)) && last.size() == 1;
    return isEastern(first) && !isEastern(last) && !given;
  }

  private static boolean isEastern(List<Token> group) {
    return Lists.all(
        group, token -> NameTable.FAMILY.standsFirst(Spelling.withoutUmlauts(token.text())));
  }

  private static String key(List<Token> group) {
    return Spelling.withoutUmlauts(Token.words(group, ""));
  }

  private static boolean isInitial(Token token) {
    return token.text().length() == 1
        && token.text().charAt(0) < 0x80
        && !token.written().startsWith(NameTokens.CUT_OFF);
  }

  private static boolean isSmall(List<Token> group) {
    return group.get(0).written().equals(group.get(0).written().toLowerCase(Locale.ROOT));
  }

  private static boolean isParticle(List<Token> group) {
    return Lists.all(group, PersonReader::isParticle);
  }

  /** A single capital letter is an initial, but for the particle that was cut off a name. */
  private static boolean isParticle(Token token) {
    boolean known = NameVocabulary.PARTICLES.has(token.text());
    return token.written().startsWith(NameTokens.CUT_OFF)
        || known && (token.text().length() > 1 || token.written().equals(token.text()));
  }

  private static boolean isPatronymic(List<Token> group) {
    return group.size() == 1 && Lists.any(PATRONYMICS, group.get(0).text()::endsWith);
  }

  /** How many groups at the beginning are in capitals while others are not: the family name. */
  private static int capitalsFirst(List<List<Token>> groups) {
    int end = 0;
    while (end < groups.size() && isCapitals(groups.get(end))) {
      end++;
    }
    boolean others = Lists.all(Lists.from(groups, end), PersonReader::isNotCapitals);
    return end < groups.size() && others ? end : 0;
  }

  /** Where capitals begin that go on to the end, or 0. */
  private static int capitalsLast(List<List<Token>> groups) {
    int start = groups.size();
    while (start > 0 && (isCapitals(groups.get(start - 1)) || isCapitalised(groups, start))) {
      start--;
    }
    boolean others = Lists.all(groups.subList(0, start), PersonReader::isNotCapitals);
    return start < groups.size() && others ? start : 0;
  }

  private static boolean isCapitalised(List<List<Token>> groups, int end) {
    return end < groups.size() && end > 1 && isParticle(groups.get(end - 1));
  }

  private static boolean isCapitals(List<Token> group) {
    return group.get(group.size() - 1).isCapitals() && Lists.none(group, Token::hasSmallLetter);
  }

  private static boolean isNotCapitals(List<Token> group) {
    return Lists.none(group, Token::isCapitals);
  }

  /** Words between which no hyphen stands; a particle cut off a name belongs to what follows. */
  private static List<List<Token>> groups(List<Token> tokens) {
    List<List<Token>> groups = new ArrayList<>();
    for (Token token : tokens) {
      if (groups.isEmpty() || !token.joined() && !endsInParticle(groups.get(groups.size() - 1))) {
        groups.add(new ArrayList<>());
      }
      groups.get(groups.size() - 1).add(token);
    }
    return groups;
  }

  /** {@code de Wit-van Dijk}. */
  private static boolean endsInParticle(List<Token> group) {
    Token last = group.get(group.size() - 1);
    return group.size() > 1 && last.joined() && isParticle(last);
  }

  private static List<Token> flat(List<List<Token>> groups) {
    return groups.size() == 1 ? groups.get(0) : groups.stream().flatMap(List::stream).toList();
  }

  private static int endWithoutParticles(List<Token> tokens) {
    int end = tokens.size();
    while (end > 1 && isParticle(tokens.get(end - 1)) && isSmall(Lists.from(tokens, end - 1))) {
      end--;
    }
    return end;
  }

  /** The parts of a name; what is left of a family name that is all particles stays its core. */
  private static Parts family(List<Token> given, List<Token> either, List<Token> family) {
    int last = family.size() - 1;
    List<Token> core = new ArrayList<>();
    StringBuilder particles = new StringBuilder();
    for (int i = 0; i <= last; i++) {
      if (i < last && isParticle(family.get(i))) {
        particles.append(family.get(i).text());
      } else {
        core.add(family.get(i));
      }
    }
    return new Parts(withoutParticles(given), either, core, particles.toString());
  }

  private static List<Token> withoutParticles(List<Token> given) {
    List<Token> kept = new ArrayList<>();
    for (int i = 0; i < given.size(); i++) {
      if (i == 0 || !isParticle(given.get(i)) || !isSmall(given.subList(i, i + 1))) {
        kept.add(given.get(i));
      }
    }
    return kept;
  }

  static List<Token> withoutSigns(List<Token> tokens) {
    return Lists.any(tokens, Token::isSign)
        ? tokens.stream().filter(token -> !token.isSign()).toList()
        : tokens;
  }
}
