package withers.chip;

import static withers.chip.CountryCodes.Status.NEVER_VALID;
import static withers.chip.CountryCodes.Status.UNASSIGNED;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withers.chip.CountryCodes.Status;
import withers.chip.Reading.Guessed;

/**
 * Reads the ISO word in hexadecimal: sixteen digits in either bit order, or code and national code
 * with a dot between.
 *
 * <p>Which of the two orders is meant is judged by what the word would say (a project judgement):
 * an animal's word with clear reserved bits and a code that was given to someone is possible; one
 * that also claims no retagging, no user information and no advanced transponder, as nearly all do,
 * is plain and outweighs a merely possible one. Equals are both guesses.
 */
record WordReader(IsoRules iso) {

  private static final Pattern DOTTED = Pattern.compile("([0-9A-F]{3})\\.([0-9A-F]{10})");
  private static final int RADIX = 16;

  private record Order(IsoWord word, Repair repair) {

    int weight() {
      return word.isAnimal() && word.reserved() == 0 && isGiven() ? weightOfPossible() : 0;
    }

    private boolean isGiven() {
      Status status = CountryCodes.status(word.code());
      return status != NEVER_VALID && status != UNASSIGNED;
    }

    private int weightOfPossible() {
      return word.retaggingCounter() == 0
              && word.userInformation() == 0
              && !word.isAdvancedTransponder()
          ? 2
          : 1;
    }
  }

  /**
   * Empty if this is not dotted hexadecimal, or if decimal digits throughout make it improbable
   * that it is.
   */
  Optional<Reading> readDotted(String original, String spelling) {
    Matcher matcher = DOTTED.matcher(spelling);
    return matcher.matches()
        ? readDotted(
            original,
            Integer.parseInt(matcher.group(1), RADIX),
            Long.parseLong(matcher.group(2), RADIX),
            hasLetters(spelling))
        : Optional.empty();
  }

  private Optional<Reading> readDotted(
      String original, int code, long nationalCode, boolean hasLetters) {
    Reading reading = iso.read(code, nationalCode);
    return hasLetters
        ? Optional.of(reading)
        : Readings.sureNumber(reading)
            .map(
                number ->
                    new Guessed(
                        original,
                        List.of(new Candidate(number, Repair.DIGITS_READ_AS_HEXADECIMAL))));
  }

  /** Reads sixteen hexadecimal digits. */
  Reading readSixteen(String original, String hexadecimal) {
    List<Order> orders = likeliestOrders(Long.parseUnsignedLong(hexadecimal, RADIX));
    if (orders.isEmpty()) {
      return hasLetters(hexadecimal) ? Refusals.implausibleIsoWord() : Refusals.wrongLength(RADIX);
    }
    List<Reading> readings = orders.stream().map(this::read).distinct().toList();
    List<Candidate> candidates = orders.stream().flatMap(this::candidate).toList();
    return candidates.isEmpty() || readings.size() == 1 && hasLetters(hexadecimal)
        ? readings.get(0)
        : new Guessed(original, candidates);
  }

  private static List<Order> likeliestOrders(long bits) {
    Order standard = new Order(new IsoWord(bits), Repair.WORD_IN_STANDARD_ORDER);
    Order received = new Order(IsoWord.ofReceived(bits), Repair.WORD_AS_RECEIVED);
    int most = Math.max(1, Math.max(standard.weight(), received.weight()));
    return Stream.of(standard, received).filter(order -> order.weight() == most).toList();
  }

  private Reading read(Order order) {
    return iso.read(order.word().code(), order.word().nationalCode());
  }

  private Stream<Candidate> candidate(Order order) {
    return Readings.sureNumber(read(order)).stream()
        .map(number -> new Candidate(number, order.repair()));
  }

  private static boolean hasLetters(String spelling) {
    return spelling.chars().anyMatch(Ascii::isCapital);
  }
}
