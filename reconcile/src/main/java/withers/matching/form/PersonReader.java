package withers.matching.form;

import java.util.ArrayList;
import java.util.List;

/** Reads one person's name, written in one piece or in two columns. */
final class PersonReader {
  private PersonReader() {}

  /** A name in two columns, titles and generation anywhere in them. */
  static Draft columns(List<Token> given, List<Token> family) {
    Trimmed first = Trimmed.of(given);
    Trimmed second = Trimmed.of(family);
    List<Token> names = withoutSigns(first.tokens());
    int end = Particles.lastOnes(names);
    List<Token> all = Lists.joined(Lists.from(names, end), withoutSigns(second.tokens()));
    Parts parts = Particles.parts(names.subList(0, end), List.of(), all);
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
    return Draft.stated(Particles.parts(List.of(), List.of(), draft.straight().either()));
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
    Parts parts = Particles.parts(List.of(), List.of(), words);
    boolean alone = parts.family().size() == 1 || NameGroups.of(words).size() == 1;
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
    NameGroups groups = NameGroups.of(tokens);
    if (groups.size() < 2) {
      return EastAsian.unspaced(tokens).orElseGet(() -> Draft.usual(Parts.unknown(tokens)));
    }
    int capitals = groups.capitalsFirst();
    if (capitals > 0) {
      return Draft.stated(familyFirst(groups, capitals));
    }
    int end = groups.capitalsLast();
    if (end > 0) {
      return Draft.stated(Particles.parts(groups.words(0, end), List.of(), groups.from(end)));
    }
    return groups.startsWithFamily() ? familyFirst(groups) : givenFirst(groups);
  }

  private static Parts familyFirst(NameGroups groups, int end) {
    return Particles.parts(groups.from(end), List.of(), groups.words(0, end));
  }

  private static Draft familyFirst(NameGroups groups) {
    Parts straight = familyFirst(groups, groups.endOfFamily());
    return Draft.of(straight, givenFirstParts(groups), PersonName.Order.USUAL);
  }

  private static Draft givenFirst(NameGroups groups) {
    Parts straight = givenFirstParts(groups);
    int end = groups.endOfFamily();
    int last = groups.size() - 1;
    Parts swapped =
        end > last
            ? straight.swapped()
            : Particles.parts(
                groups.last().tokens(), groups.words(end, last), groups.words(0, end));
    return Draft.of(straight, swapped, PersonName.Order.USUAL);
  }

  private static Parts givenFirstParts(NameGroups groups) {
    boolean eastern = groups.size() > 2 && groups.last().isEastern();
    int start = groups.startOfFamily();
    List<Token> given = new ArrayList<>(groups.get(0).tokens());
    List<Token> either = new ArrayList<>();
    for (NameGroup group : groups.all().subList(1, start)) {
      boolean sure = eastern || group.isInitial() || group.isPatronymic();
      if (sure || !group.isParticle()) {
        (sure ? given : either).addAll(group.tokens());
      }
    }
    return Particles.parts(given, either, groups.from(start));
  }

  static List<Token> withoutSigns(List<Token> tokens) {
    return Lists.any(tokens, Token::isSign)
        ? tokens.stream().filter(token -> !token.isSign()).toList()
        : tokens;
  }
}
