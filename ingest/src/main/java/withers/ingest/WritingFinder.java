package withers.ingest;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import withers.ingest.inspect.Question;
import withers.ingest.inspect.Writing;
import withers.ingest.pack.PackedFile;
import withers.ingest.pack.Signature;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.sniff.CharsetSniffer;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Finding;
import withers.ingest.sniff.Guess;
import withers.ingest.sniff.Quoting;
import withers.ingest.sniff.Sniffed;
import withers.ingest.sniff.Sniffer;
import withers.yaml.Choices;

/** Finds out how a file is written, and what about it is in doubt. */
final class WritingFinder {

  /** From this confidence on, and well ahead of the others, a delimiter or a header is taken. */
  private static final int SURE = 60;

  private static final DatePattern ANY_DATE = DatePattern.of("yyyy-MM-dd");

  private final Sniffed sniffed;
  private final List<String> reasons = new ArrayList<>();
  private final List<Question> doubts = new ArrayList<>();

  private WritingFinder(Sniffed sniffed) {
    this.sniffed = sniffed;
  }

  static Writing find(PackedFile file, Optional<String> sheet, ToLongFunction<List<String>> known) {
    byte[] sample = sample(file);
    if (isWorkbook(file, sample)) {
      FileFormat format = new FileFormat(TextFormat.FOUND_OUT, sheet, List.of(), ANY_DATE);
      return new Writing(format, false, List.of(), List.of("a spreadsheet"), List.of());
    }
    boolean whole = sample.length < Sniffer.SAMPLE;
    Finding<Charset> charset =
        whole ? CharsetSniffer.find(sample) : LongFileCharset.of(file, sample);
    Finding<Charset> tried = bestHeaderFirst(sample, whole, charset, known);
    return new WritingFinder(Sniffer.sniff(sample, whole, tried)).text();
  }

  private static boolean isWorkbook(PackedFile file, byte[] sample) {
    try {
      return file.isWorkbook(Arrays.copyOf(sample, Math.min(sample.length, Signature.LENGTH)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Of several sets, that is tried first in which most of the header's words are known. */
  private static Finding<Charset> bestHeaderFirst(
      byte[] sample, boolean whole, Finding<Charset> found, ToLongFunction<List<String>> known) {
    if (found.ifClear(CharsetSniffer.TAKEN_FROM).isPresent()) {
      return found;
    }
    Comparator<Guess<Charset>> byWords =
        Comparator.comparingLong(
            guess ->
                known.applyAsLong(
                    header(Sniffer.sniff(sample, whole, new Finding<>(List.of(guess))))));
    return found.guesses().stream()
        .max(byWords.thenComparing(Guess::confidence))
        .map(best -> first(best, found))
        .orElse(found);
  }

  /** Put first it still is as doubtful as it was: equals stay in the order that is given. */
  private static Finding<Charset> first(Guess<Charset> best, Finding<Charset> found) {
    int most = found.best().map(Guess::confidence).orElse(0);
    List<Guess<Charset>> guesses = new ArrayList<>();
    guesses.add(new Guess<>(best.value(), most, best.evidence()));
    found.guesses().stream().filter(guess -> !guess.equals(best)).forEach(guesses::add);
    return new Finding<>(guesses);
  }

  private static byte[] sample(PackedFile file) {
    try (InputStream in = file.open()) {
      return in.readNBytes(Sniffer.SAMPLE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Writing text() {
    Charset charset =
        take(
            "charset",
            "In which character set is the file written?",
            sniffed.charset(),
            CharsetSniffer.TAKEN_FROM,
            StandardCharsets.UTF_8);
    Delimiter delimiter =
        take(
            "delimiter",
            "What stands between the cells?",
            sniffed.delimiter(),
            SURE,
            Delimiter.COMMA);
    Quoting quoting =
        take("quoting", "What stands around cells?", sniffed.quoting(), SURE, Quoting.DOUBLE);
    List<String> header = ColumnNames.of(header());
    TextFormat format = new TextFormat(Optional.of(delimiter), Optional.of(quoting), set(charset));
    return new Writing(new FileFormat(format, ANY_DATE), true, header, reasons, doubts);
  }

  /** Where a mark or the bytes themselves tell, nothing needs to be declared. */
  private static Optional<Charset> set(Charset charset) {
    return Optional.of(charset).filter(one -> !one.name().startsWith("UTF-"));
  }

  private <T> T take(
      String about, String question, Finding<T> finding, int confidence, T otherwise) {
    finding
        .best()
        .ifPresent(best -> reasons.add(about + " " + name(best.value()) + ": " + best.evidence()));
    if (finding.ifClear(confidence).isEmpty()) {
      doubts.add(new Question(about, question, choices(finding)));
    }
    return finding.best().map(Guess::value).orElse(otherwise);
  }

  private static <T> List<String> choices(Finding<T> finding) {
    Stream<Guess<T>> guesses = finding.guesses().stream().limit(4);
    return guesses
        .map(guess -> "%s (%s)".formatted(name(guess.value()), guess.evidence()))
        .toList();
  }

  private static String name(Object value) {
    return value instanceof Enum<?> constant ? Choices.name(constant) : String.valueOf(value);
  }

  private List<String> header() {
    if (sniffed.header().ifClear(SURE).isEmpty()) {
      doubts.add(
          new Question(
              "header",
              "Which line is the header? None looks like one for sure",
              sniffed.header().guesses().stream().limit(3).map(Guess::evidence).toList()));
    }
    return header(sniffed);
  }

  private static List<String> header(Sniffed sniffed) {
    int place = sniffed.header().best().map(Guess::value).orElse(0);
    return sniffed.records().isEmpty() ? List.of() : sniffed.records().get(place).cells();
  }
}
