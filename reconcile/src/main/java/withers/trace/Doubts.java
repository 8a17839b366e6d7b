package withers.trace;

import java.util.List;
import java.util.stream.Stream;
import withers.custody.LastHandover;
import withers.history.Statement;
import withers.rule.Dossier;

/** Where records contradict each other about who has the animal, or whether it lives. */
final class Doubts {
  private Doubts() {}

  /** A sentence each; people are "a private person". */
  static List<String> of(Dossier dossier, Wording wording) {
    Stream<String> custody =
        dossier.custody().isInDoubt() ? Stream.of(custody(dossier, wording)) : Stream.empty();
    Stream<String> deaths =
        dossier.deaths().contradicted().stream().map(death -> death(death, dossier, wording));
    return Stream.concat(custody, deaths).toList();
  }

  private static String custody(Dossier dossier, Wording wording) {
    LastHandover last = dossier.custody().trail().last();
    return "Nobody can tell who has it: on %s it went to %s."
        .formatted(
            last.candidates().get(0).statement().day(),
            String.join(
                ", and to ",
                last.candidates().stream()
                    .map(handover -> wording.who(handover.receiver()))
                    .toList()));
  }

  private static String death(Statement death, Dossier dossier, Wording wording) {
    return "%s tells of its death on %s, and others dealt with it later."
        .formatted(wording.name(dossier.cast().organisation(death)), death.day());
  }
}
