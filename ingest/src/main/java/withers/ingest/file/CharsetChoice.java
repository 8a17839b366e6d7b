package withers.ingest.file;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import withers.ingest.pack.PackedFile;
import withers.ingest.rows.Refusals;
import withers.ingest.sniff.CharsetSniffer;
import withers.ingest.sniff.Finding;
import withers.ingest.sniff.Guess;

/**
 * The character set that a file is read in.
 *
 * @param remarks what a person should know about it: that it was found out
 */
record CharsetChoice(Charset charset, List<String> remarks) {

  private static final int NUL_PATTERN = 60;
  private static final int SHOWN = 3;

  /**
   * Chooses: a byte order mark tells; else UTF-8 where the bytes are that; else what the profile
   * says; else what can be found out without much doubt.
   *
   * @param declared what the profile says
   * @throws withers.source.InputRefusedException when it is empty, binary, or in doubt
   */
  static CharsetChoice of(PackedFile file, ByteScan scan, Optional<Charset> declared)
      throws IOException {
    if (scan.size() == 0) {
      throw Refusals.empty(file.name());
    }
    Optional<Charset> wide = marked(scan).or(() -> declared).filter(CharsetChoice::isWide);
    if (wide.isPresent()) {
      return sure(wide.get());
    }
    if (scan.hasNul()) {
      return byNuls(file, scan);
    }
    if (scan.isUtf8()) {
      return sure(StandardCharsets.UTF_8);
    }
    Optional<Charset> stated = marked(scan).or(() -> declared);
    if (stated.filter(StandardCharsets.UTF_8::equals).isPresent()) {
      throw Refusals.charset(file.name(), "UTF-8", scan.lineOfFirstBadByte());
    }
    return stated.isPresent() ? sure(stated.get()) : detected(file, scan);
  }

  private static Optional<Charset> marked(ByteScan scan) {
    return CharsetSniffer.mark(scan.head()).best().map(Guess::value);
  }

  private static boolean isWide(Charset charset) {
    return charset.name().startsWith("UTF-16") || charset.name().startsWith("UTF-32");
  }

  private static CharsetChoice sure(Charset charset) {
    return new CharsetChoice(charset, List.of());
  }

  private static CharsetChoice byNuls(PackedFile file, ByteScan scan) {
    Finding<Charset> found = CharsetSniffer.nuls(scan.head());
    return found
        .ifClear(NUL_PATTERN)
        .map(charset -> foundOut(file, charset, found))
        .orElseThrow(() -> Refusals.nul(file.name(), scan.lineOfFirstNul()));
  }

  private static CharsetChoice detected(PackedFile file, ByteScan scan) throws IOException {
    Finding<Charset> found = CharsetSniffer.detected(TellingLines.of(file));
    return found
        .ifClear(CharsetSniffer.TAKEN_FROM)
        .map(charset -> foundOut(file, charset, found))
        .orElseThrow(
            () ->
                Refusals.charsetInDoubt(
                    file.name(), scan.lineOfFirstBadByte(), guesses(found.guesses())));
  }

  private static CharsetChoice foundOut(PackedFile file, Charset charset, Finding<Charset> found) {
    String others = guesses(found.runnersUp());
    String remark =
        "%s: read as %s, which was found out (%d of 100%s). See that names with accents are right, then write format: charset: %s in the profile."
            .formatted(
                file.name(),
                charset,
                found.best().map(Guess::confidence).orElse(0),
                others.isEmpty() ? "" : "; else " + others,
                charset);
    return new CharsetChoice(charset, List.of(remark));
  }

  private static String guesses(List<Guess<Charset>> guesses) {
    return guesses.stream()
        .limit(SHOWN)
        .map(guess -> "%s (%d of 100)".formatted(guess.value(), guess.confidence()))
        .collect(Collectors.joining(" or "));
  }
}
