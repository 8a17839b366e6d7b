package withers.report.list;

import java.util.List;
import withers.finding.Compared;
import withers.finding.Finding.Registration;
import withers.matching.Level;
import withers.report.text.Texts;

/** Puts into words how registered contacts compare with whoever has the animal. */
record Comparisons(Texts texts, Reader reader) {

  /** From so many hundredths of a bit on, a trait says something: two to one (our judgement). */
  private static final long SOMETHING = 100;

  /** From so many on, it says much: some thirty to one (our judgement). */
  private static final long MUCH = 500;

  /** Those of registrations whose contact is compared with somebody. */
  List<Comparing> of(List<Registration> registered) {
    return registered.stream()
        .flatMap(one -> one.compared().map(compared -> of(one, compared)).stream())
        .distinct()
        .toList();
  }

  private Comparing of(Registration registration, Compared compared) {
    String registry = reader.organisation(registration.registry()).name();
    return new Comparing(
        texts.say("compare.heading", registry, Numbers.spoken(registration.chip())),
        compared.weights().stream().map(this::line).toList(),
        texts.say("compare.ground." + word(compared.ground())));
  }

  private Comparing.Line line(Compared.Weight weight) {
    return new Comparing.Line(
        texts.say("compare.trait." + weight.trait().word()),
        texts.say("compare.level." + weight.level().word()),
        weight.level() == Level.MISSING ? "" : texts.say("compare.says." + says(weight)));
  }

  private static String says(Compared.Weight weight) {
    String side = weight.hundredths() > 0 ? "for" : "against";
    long size = Math.abs(weight.hundredths());
    if (size < SOMETHING) {
      return "little";
    }
    return size < MUCH ? side : "strongly-" + side;
  }

  private static String word(Enum<?> constant) {
    return withers.report.text.Words.of(constant);
  }
}
