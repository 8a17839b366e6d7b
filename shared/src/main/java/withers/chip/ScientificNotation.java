package withers.chip;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.chip.Reading.Guessed;
import withers.chip.Reading.NoNumber;

/** Reads what a spreadsheet makes of a long number: 9.85112E+14. */
record ScientificNotation(DigitsReader digits) {

  private static final Pattern NOTATION =
      Pattern.compile("([0-9])(?:[.,]([0-9]{1,20}))?E\\+?([0-9]{1,2})");

  /** Empty if the text is not in this notation. */
  Optional<Reading> read(String original, String spelling) {
    Matcher matcher = NOTATION.matcher(spelling);
    if (spelling.indexOf('E') < 0 || !matcher.matches()) {
      return Optional.empty();
    }
    String significant = matcher.group(1) + Optional.ofNullable(matcher.group(2)).orElse("");
    int count = Integer.parseInt(matcher.group(3)) + 1;
    return Optional.of(read(original, significant, count));
  }

  private Reading read(String original, String significant, int count) {
    if (significant.matches("0+")) {
      return new NoNumber(Placeholder.ZEROS);
    }
    if (significant.length() > count) {
      return Refusals.notANumber(original);
    }
    return significant.length() < count
        ? digits.readTruncated(original, significant, count)
        : writtenOut(original, digits.read(original, significant));
  }

  private static Reading writtenOut(String original, Reading reading) {
    return Readings.sureNumber(reading)
        .<Reading>map(
            number ->
                new Guessed(
                    original,
                    List.of(new Candidate(number, Repair.SCIENTIFIC_NOTATION_WRITTEN_OUT))))
        .orElse(reading);
  }
}
