package withers.matching.form;

/**
 * One person's name, in both ways in which it can be read. The text form never shows it.
 *
 * @param straight the likelier reading
 * @param swapped with given and family name the other way round, as when the columns were swapped
 *     or the family name stands first; equal to {@code straight} when there is no other way
 * @param order how sure the straight reading is
 * @param generation what tells parent and child of one name apart
 * @param sex what a title says
 * @param wholeFamily whether the family is named and nobody of it ({@code Familie Müller})
 */
public record PersonName(
    Reading straight,
    Reading swapped,
    Order order,
    Generation generation,
    Sex sex,
    boolean wholeFamily) {

  /** How the order of a name is known. */
  public enum Order {
    /** Two columns, a comma, or capitals. */
    STATED,
    /** One piece, read in the order that is usual: given name first. */
    USUAL
  }

  /** What tells people of one name apart within a family. */
  public enum Generation {
    NOT_STATED,
    SENIOR,
    JUNIOR,
    SECOND,
    THIRD,
    FOURTH;

    /** Whether both are stated and cannot be one person's. Junior and the second are the same. */
    public boolean contradicts(Generation other) {
      return this != NOT_STATED && other != NOT_STATED && rank() != other.rank();
    }

    private int rank() {
      return this == SECOND ? JUNIOR.ordinal() : ordinal();
    }
  }

  /** What a title says (Mr, Señora), and nothing else: a given name says nothing here. */
  public enum Sex {
    NOT_STATED,
    FEMALE,
    MALE
  }

  @Override
  public String toString() {
    return "PersonName[details withheld]";
  }
}
