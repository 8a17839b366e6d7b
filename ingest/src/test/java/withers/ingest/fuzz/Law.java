package withers.ingest.fuzz;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withers.source.InputRefusedException;

/** What must hold whatever comes in. */
final class Law {

  /** So many signs in a row are no coincidence. */
  private static final int TELLING = 16;

  private static final int LONGEST_MESSAGE = 4_000;
  private static final List<Charset> CHARSETS =
      List.of(
          StandardCharsets.UTF_8,
          StandardCharsets.ISO_8859_1,
          StandardCharsets.UTF_16LE,
          StandardCharsets.UTF_16BE);

  private static final Pattern NOTHING = Pattern.compile("(?!)");

  private Law() {}

  static void require(boolean holds, String law) {
    if (!holds) {
      throw new AssertionError("Expected that " + law);
    }
  }

  /** As {@link #readTwice(byte[], Pattern, Supplier)}, where a message may name nothing. */
  static String readTwice(byte[] input, Supplier<String> reading) {
    return readTwice(input, NOTHING, reading);
  }

  /**
   * What a reading tells; the same when it is read once more. A refusal is a reading as well, if it
   * is said in words that give nothing of the input away.
   *
   * @param names where a message names a sheet or an entry, which it may
   */
  static String readTwice(byte[] input, Pattern names, Supplier<String> reading) {
    String once = read(input, names, reading);
    require(once.equals(read(input, names, reading)), "what is read twice is read the same");
    return once;
  }

  private static String read(byte[] input, Pattern names, Supplier<String> reading) {
    try {
      return reading.get();
    } catch (InputRefusedException refused) {
      String message = String.valueOf(refused.getMessage());
      requireDiscreet(names.matcher(message).replaceAll("...): "), input);
      return message;
    }
  }

  /** A message is one sentence or two of ours, and nothing of the input. */
  static void requireDiscreet(String message, byte[] input) {
    require(message.startsWith("Expected "), "a refusal says what was expected");
    require(message.chars().noneMatch(Character::isISOControl), "a refusal can be printed");
    require(message.length() <= LONGEST_MESSAGE, "a refusal is short");
    List<String> texts = CHARSETS.stream().map(charset -> new String(input, charset)).toList();
    require(
        runs(told(message, texts))
            .noneMatch(run -> texts.stream().anyMatch(text -> text.contains(run))),
        "a refusal shows no cell");
  }

  /** The fuzzer learns words that it sees compared: the advice that ends a message is ours. */
  private static String told(String message, List<String> texts) {
    int advice = message.lastIndexOf("): ");
    boolean isLearnt = texts.stream().anyMatch(text -> text.contains("othing was"));
    return isLearnt && advice >= 0 ? message.substring(0, advice) : message;
  }

  private static Stream<String> runs(String message) {
    return Stream.iterate(0, at -> at + TELLING <= message.length(), at -> at + 1)
        .map(at -> message.substring(at, at + TELLING));
  }
}
