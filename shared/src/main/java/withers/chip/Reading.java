package withers.chip;

import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** What a text says about a chip number: one of six answers. */
public sealed interface Reading {

  /** The answers, one for each record of this interface. */
  enum Kind {
    /** See {@link Reading.Accepted}. */
    ACCEPTED,
    /** See {@link Reading.Tentative}. */
    TENTATIVE,
    /** See {@link Reading.Guessed}. */
    GUESSED,
    /** See {@link Reading.Truncated}. */
    TRUNCATED,
    /** See {@link Reading.NoNumber}. */
    NO_NUMBER,
    /** See {@link Reading.Refused}. */
    REFUSED
  }

  /** Which answer this is. */
  Kind kind();

  /**
   * The text is this number and can be no other.
   *
   * @param number the number
   * @param warnings what is odd about it, in the order of the enum
   */
  record Accepted(ChipNumber number, Set<Warning> warnings) implements Reading {

    /** Copies the warnings. */
    public Accepted {
      // An EnumSet iterates in one order in every run; Set.of does not.
      warnings =
          warnings.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(warnings));
    }

    @Override
    public Kind kind() {
      return Kind.ACCEPTED;
    }
  }

  /**
   * The text has the form of this number and of other things too, such as a phone number: it counts
   * only when the column or a second source says that it is a chip's.
   *
   * @param number the number
   * @param why what else it could be, as a sentence's end
   */
  record Tentative(ChipNumber number, String why) implements Reading {

    @Override
    public Kind kind() {
      return Kind.TENTATIVE;
    }
  }

  /**
   * The text is damaged, and these are the numbers that it may have been. None is to be taken
   * without evidence from elsewhere.
   *
   * @param original the text as it was
   * @param candidates at least one, in order of number, each number once
   */
  record Guessed(String original, List<Candidate> candidates) implements Reading {

    /**
     * Orders the candidates; of those with one number it keeps the first by order of repair.
     *
     * @throws IllegalArgumentException if there are none
     */
    public Guessed {
      SortedMap<ChipNumber, Candidate> byNumber = new TreeMap<>();
      candidates.stream()
          .sorted(Comparator.comparing(Candidate::repair))
          .forEach(candidate -> byNumber.putIfAbsent(candidate.number(), candidate));
      candidates = List.copyOf(byNumber.values());
      if (candidates.isEmpty()) {
        throw new IllegalArgumentException("Expected at least one candidate, but found none");
      }
    }

    @Override
    public Kind kind() {
      return Kind.GUESSED;
    }
  }

  /**
   * Only the first digits of the number survive, as when a spreadsheet shows it in scientific
   * notation: it may be any of a range.
   *
   * @param original the text as it was
   * @param survivingDigits the first digits, lost leading zeros put back; the last of them may be
   *     rounded up
   * @param lostDigits how many digits followed them, at least 1
   */
  record Truncated(String original, String survivingDigits, int lostDigits) implements Reading {

    /**
     * Checks that digits survive, that some are lost, and that a kind of number has as many.
     *
     * @throws IllegalArgumentException if that is not so
     */
    public Truncated {
      LostDigits.check(survivingDigits, lostDigits);
    }

    /** What survives. */
    public LostDigits digits() {
      return new LostDigits(survivingDigits, lostDigits);
    }

    /**
     * Whether the number may be the one that was cut short: as many digits, beginning with the
     * surviving ones or rounding to them.
     */
    public boolean admits(ChipNumber number) {
      return digits().admits(number);
    }

    @Override
    public Kind kind() {
      return Kind.TRUNCATED;
    }
  }

  /**
   * The text says that there is no number here.
   *
   * @param placeholder in which way
   */
  record NoNumber(Placeholder placeholder) implements Reading {

    @Override
    public Kind kind() {
      return Kind.NO_NUMBER;
    }
  }

  /**
   * The text is no chip number.
   *
   * @param reason why
   * @param message what was expected, what was found and what to do; it repeats no letters of the
   *     text, which may be a person's name in the wrong column
   */
  record Refused(RefusalReason reason, String message) implements Reading {

    @Override
    public Kind kind() {
      return Kind.REFUSED;
    }
  }
}
