package withers.report.list;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.finding.Damage;
import withers.finding.Evidence;
import withers.finding.Evidence.Part;
import withers.report.text.OneLine;
import withers.report.text.Texts;
import withers.report.text.Words;

/** What a finding rests on, a sentence for each statement: the day, whose record, which one. */
final class Grounds {

  private static final Set<Part> RECEIVING = Set.of(Part.WENT_TO, Part.HELD_BY);
  private static final Pattern FILE_AND_LINE = Pattern.compile("(.+):([0-9]+)");

  private final Texts texts;
  private final Phrases phrases;

  Grounds(Texts texts, Phrases phrases) {
    this.texts = texts;
    this.phrases = phrases;
  }

  List<String> of(Situation situation) {
    List<Evidence> all = situation.finding().evidence();
    Reader reader = situation.reader();
    List<String> sentences = new ArrayList<>();
    for (Evidence one : all) {
      if (one.part() == Part.CAME_FROM && receiver(one, all).isPresent()) {
        sentences.add(sentence(one, handover(one, receiver(one, all).get(), reader), reader));
      } else if (!isReceiver(one, all)) {
        sentences.add(sentence(one, fact(one, reader), reader));
      }
    }
    situation.finding().damage().map(this::damaged).ifPresent(sentences::add);
    return sentences.stream().distinct().toList();
  }

  private String damaged(Damage damage) {
    return texts.say(
        "evidence.damaged", texts.date(damage.firstStated()), where(OneLine.of(damage.where())));
  }

  /** Who received the animal from whom is one statement, and one sentence. */
  private static Optional<Evidence> receiver(Evidence giver, List<Evidence> all) {
    return all.stream()
        .filter(other -> RECEIVING.contains(other.part()) && isSameStatement(giver, other))
        .findFirst();
  }

  private static boolean isReceiver(Evidence one, List<Evidence> all) {
    return RECEIVING.contains(one.part())
        && all.stream().anyMatch(g -> g.part() == Part.CAME_FROM && isSameStatement(g, one));
  }

  private static boolean isSameStatement(Evidence one, Evidence other) {
    return one.day().equals(other.day())
        && one.source().equals(other.source())
        && one.key().equals(other.key())
        && one.slot() == other.slot()
        && one.chip().equals(other.chip());
  }

  private String handover(Evidence giver, Evidence receiver, Reader reader) {
    return texts.say(
        "evidence.handover." + Words.of(receiver.part()),
        texts.date(giver.day()),
        phrases.who(reader.see(giver.who())),
        phrases.who(reader.see(receiver.who())));
  }

  private String sentence(Evidence evidence, String fact, Reader reader) {
    return texts.say(
        reader.is(evidence.saidBy()) ? "evidence.source.own" : "evidence.source",
        fact,
        reader.organisation(evidence.saidBy()).name(),
        OneLine.of(evidence.key().value()),
        texts.date(evidence.firstStated()),
        where(OneLine.of(evidence.where())));
  }

  /** "patients.csv:12", or whatever else the place may be. */
  private String where(String place) {
    Matcher line = FILE_AND_LINE.matcher(place);
    return line.matches() ? texts.say("evidence.where", line.group(1), line.group(2)) : place;
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
