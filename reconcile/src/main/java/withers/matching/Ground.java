package withers.matching;

/** The rule that decided a verdict, by docs/matching.md. */
public enum Ground {
  /** Likely enough one person, and nothing that both state is another. */
  ONE_PERSON("they are one person, and nothing that both state is another"),
  /** Likely enough one person, with something to bring up to date. */
  ONE_PERSON_WITH_CHANGES("they are one person, of whom something has changed or is wrong"),
  /** Two people: their names say so, and what they share is a household's. */
  TWO_UNDER_ONE_ROOF("they are two people, who share what a household shares"),
  /** Two people: their names say so, and they share nothing that speaks for a household. */
  TWO_PEOPLE("they are two people, who share too little for a household"),
  /** Names that agree prove too little, or nothing can be compared. */
  TOO_LITTLE("what both state fits one person as well as two"),
  /** Some of it says one person, some of it two. */
  IN_BETWEEN("some of it speaks for one person and some against");

  private final String words;

  Ground(String words) {
    this.words = words;
  }

  /** For an explanation: a sentence without its full stop. */
  public String words() {
    return words;
  }
}
