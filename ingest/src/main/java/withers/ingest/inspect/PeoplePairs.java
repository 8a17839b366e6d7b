package withers.ingest.inspect;

import java.util.EnumSet;
import java.util.Set;
import withers.ingest.profile.PartyName;

/**
 * What columns about people say for each other. The figures are our judgement, common practice
 * without a source.
 */
record PeoplePairs(Relations relations) {

  /** What an e-mail address says of a name: it mostly repeats it. */
  double mail(Field f, Column a, Field g, Column b) {
    if (f.use() != Use.EMAIL) {
      return 0;
    }
    boolean same = f.party().equals(g.party());
    return switch (g.use()) {
      case GIVEN_NAME -> same ? given(a, b) : 0;
      case FAMILY_NAME -> same ? family(a, b) : 0;
      case FULL_NAME -> relations.mailShares(a, b) >= 0.4 ? (same ? 4 : -4) : same ? -1 : 0;
      case ANIMAL_NAME, TOWN ->
          relations.mailStartsWith(a, b) >= 0.3 || relations.mailGoesOnWith(a, b) >= 0.3 ? -10 : 0;
      default -> 0;
    };
  }

  private double given(Column mail, Column name) {
    return relations.mailStartsWith(mail, name) >= 0.4
        ? 6
        : relations.mailGoesOnWith(mail, name) >= 0.4 ? -4 : -2;
  }

  private double family(Column mail, Column name) {
    return relations.mailGoesOnWith(mail, name) >= 0.4
        ? 6
        : relations.mailStartsWith(mail, name) >= 0.4 ? -4 : -2;
  }

  /** What two columns about somebody say of being about the same person. */
  double together(Field f, Column a, Field g, Column b) {
    if (f.party().isEmpty() || g.party().isEmpty()) {
      return 0;
    }
    boolean same = f.party().equals(g.party());
    return sharedWords(same, a, b) + (same ? filledTogether(f, a, g, b) + nameForms(f, g) : 0);
  }

  /** A word that is in no list ties columns together all the same. */
  private static double sharedWords(boolean sameParty, Column a, Column b) {
    boolean shared = a.meaning().unknown().stream().anyMatch(b.meaning().unknown()::contains);
    return shared ? (sameParty ? 1 : -1) : 0;
  }

  /** Details stand only where there is somebody; they may be missing. */
  private double filledTogether(Field f, Column a, Field g, Column b) {
    if (a.isEmpty() || b.isEmpty() || a.fill() > Relations.ALWAYS && b.fill() > Relations.ALWAYS) {
      return 0;
    }
    double alike = gapsTogether(a, b);
    if (f.use().isName() == g.use().isName() || isInsteadOfAPerson(f) || isInsteadOfAPerson(g)) {
      return alike;
    }
    double within = f.use().isName() ? relations.within(b, a) : relations.within(a, b);
    return alike + (within >= 0.95 ? 0 : within >= 0.7 ? -1 : -4);
  }

  /** Gaps in the same rows; a column without gaps goes with every other. */
  private double gapsTogether(Column a, Column b) {
    if (a.fill() > Relations.ALWAYS || b.fill() > Relations.ALWAYS) {
      return 0;
    }
    double together = relations.filledTogether(a, b);
    return together >= 0.97 ? 2.5 : together >= 0.85 ? 1.5 : 0;
  }

  /** A shelter deals with a person or with an organisation, each in columns of its own. */
  private static boolean isInsteadOfAPerson(Field field) {
    return field.use() == Use.ORGANISATION
        && !field.isOf(PartyName.HOLDER)
        && !field.isOf(PartyName.PURCHASER);
  }

  private static double nameForms(Field f, Field g) {
    Set<Use> uses = EnumSet.of(f.use(), g.use());
    if (uses.equals(Set.of(Use.GIVEN_NAME, Use.FAMILY_NAME))) {
      return 2;
    }
    boolean twice =
        uses.contains(Use.FULL_NAME)
            && (uses.contains(Use.GIVEN_NAME) || uses.contains(Use.FAMILY_NAME));
    return twice ? -8 : 0;
  }
}
