package withers.chip;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import withers.chip.Reading.Guessed;

/** Reads a text that holds more than one number. */
record SeveralNumbers(Function<String, Reading> one) {

  private static final String PARTING_SIGNS = "[/,;|&+]";
  private static final int MOST = 4;
  private static final int FEWEST_SIGNS = 18;
  private static final int MOST_SIGNS_OF_A_PAIR = 32;
  private static final int ISO_WIDTH = ChipNumber.Kind.ISO.width;

  /** Empty if the text is not two to four numbers and nothing else. */
  Optional<Reading> read(String original, String spelling) {
    List<Candidate> candidates = candidates(spelling);
    return candidates.isEmpty() ? Optional.empty() : Optional.of(new Guessed(original, candidates));
  }

  private List<Candidate> candidates(String spelling) {
    List<String> parts = Arrays.asList(spelling.split(PARTING_SIGNS, -1));
    if (parts.size() > 1) {
      return parts.size() <= MOST ? numbers(parts) : List.of();
    }
    int signs = Spelling.ungrouped(spelling).length();
    return signs >= FEWEST_SIGNS && signs <= MOST_SIGNS_OF_A_PAIR ? pairs(spelling) : List.of();
  }

  /** Every way to part the text in two at a space; an unbroken one in the middle. */
  private List<Candidate> pairs(String spelling) {
    if (spelling.length() == 2 * ISO_WIDTH) {
      return numbers(List.of(spelling.substring(0, ISO_WIDTH), spelling.substring(ISO_WIDTH)));
    }
    List<Candidate> candidates = new ArrayList<>();
    for (int at = spelling.indexOf(' '); at >= 0; at = spelling.indexOf(' ', at + 1)) {
      candidates.addAll(numbers(List.of(spelling.substring(0, at), spelling.substring(at + 1))));
    }
    return candidates;
  }

  /** The numbers of all parts; none if one of them is no number. */
  private List<Candidate> numbers(List<String> parts) {
    List<Candidate> candidates = parts.stream().flatMap(this::number).toList();
    return candidates.size() == parts.size() ? candidates : List.of();
  }

  private Stream<Candidate> number(String part) {
    return Readings.sureNumber(one.apply(part.strip())).stream()
        .filter(number -> Ascii.isHexadecimal(number.display()))
        .map(number -> new Candidate(number, Repair.ONE_OF_SEVERAL_NUMBERS));
  }
}
