package withers.report.list;

import java.util.List;
import java.util.stream.Stream;
import withers.report.text.Texts;

/** What every reader of a list should keep in mind. */
public final class Cautions {
  private Cautions() {}

  /** The cautions that hold for each follow-up, whatever its kind. */
  public static List<String> general(Texts texts) {
    return Stream.of("proof", "privacy", "law").map(name -> texts.say("caution." + name)).toList();
  }
}
