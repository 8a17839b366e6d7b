package withers.report.list;

import java.util.List;
import withers.finding.Evidence;
import withers.finding.Evidence.Part;
import withers.report.text.OneLine;
import withers.report.text.Texts;
import withers.report.text.Words;

/** What a finding rests on, a sentence for each statement: the day, whose record, which one. */
final class Grounds {

  private final Texts texts;
  private final Phrases phrases;

  Grounds(Texts texts, Phrases phrases) {
    this.texts = texts;
    this.phrases = phrases;
  }

  List<String> of(Situation situation) {
    return situation.finding().evidence().stream()
        .map(evidence -> sentence(evidence, situation.reader()))
        .distinct()
        .toList();
  }

  private String sentence(Evidence evidence, Reader reader) {
    return texts.say(
        reader.is(evidence.saidBy()) ? "evidence.source.own" : "evidence.source",
        fact(evidence, reader),
        reader.organisation(evidence.saidBy()).name(),
        OneLine.of(evidence.key().value()),
        texts.date(evidence.firstStated()),
        OneLine.of(evidence.where()));
  }

  private String fact(Evidence evidence, Reader reader) {
    Seen who = reader.see(evidence.who());
    return texts.say(
        "evidence." + part(evidence, who),
        texts.date(evidence.day()),
        Numbers.spoken(evidence.chip()),
        phrases.who(who));
  }

  private static String part(Evidence evidence, Seen who) {
    boolean masked = evidence.part() == Part.REGISTERED_TO && who instanceof Seen.Masked;
    String word = Words.of(evidence.part());
    return masked ? word + ".masked" : word;
  }
}
