package withers.report.list;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.cases.Reference;
import withers.finding.Life;
import withers.report.text.OneLine;
import withers.report.text.Texts;

/**
 * Says what became of follow-ups so far.
 *
 * @param lives how they stand
 * @param told in how many mails each was told of, by its reference
 */
record SoFar(Texts texts, Map<CaseKey, Life> lives, Map<String, Integer> told) {

  /** How a client wishes to be reached. */
  Optional<Channel> channel(CaseKey key) {
    return Optional.ofNullable(lives.get(key)).flatMap(Life::channel);
  }

  /** A sentence each, for one that is listed. */
  List<String> of(CaseKey key, Mark mark) {
    List<String> lines = new ArrayList<>();
    Optional<Life> life = Optional.ofNullable(lives.get(key));
    life.filter(Life::reopened).ifPresent(one -> lines.add(texts.say("so-far.back")));
    life.filter(one -> mark == Mark.OPEN).ifPresent(one -> lines.add(since(one)));
    life.ifPresent(one -> add(one, lines));
    return lines;
  }

  private String since(Life life) {
    int mails = told.getOrDefault(Reference.of(life.key()), 0);
    return mails == 0
        ? texts.say("so-far.since", texts.date(life.since()))
        : texts.say("so-far.since.told", texts.date(life.since()), mails);
  }

  private void add(Life life, List<String> lines) {
    List<LocalDate> attempts = life.attempts();
    if (!attempts.isEmpty()) {
      LocalDate last = attempts.get(attempts.size() - 1);
      lines.add(texts.say("so-far.attempts", attempts.size(), texts.date(last)));
    }
    life.last()
        .filter(word -> word.outcome().filter(outcome -> !outcome.isAttempt()).isPresent())
        .ifPresent(word -> lines.add(texts.say("so-far.answered", said(word))));
    life.channel()
        .filter(channel -> channel != Channel.NOT_AT_ALL)
        .ifPresent(
            channel -> lines.add(texts.say("so-far.channel", texts.sheet().channel(channel))));
  }

  /** What was told, by whom and when. */
  private String said(Life.Word word) {
    String what =
        word.outcome()
            .map(texts.sheet()::outcome)
            .orElseGet(
                () ->
                    word.reason().isEmpty()
                        ? texts.say("so-far.asked")
                        : OneLine.of(word.reason()));
    String day = texts.date(word.day());
    return word.by().isEmpty()
        ? texts.say("so-far.said", what, day)
        : texts.say("so-far.said.by", what, day, OneLine.of(word.by()));
  }

  /** Why one that rests is not listed, and until when. */
  String resting(Life life) {
    String what = life.last().map(this::said).orElse("");
    String day = life.until().map(texts::date).orElse("");
    return texts.say(
        life.stage() == Life.Stage.ANSWERED ? "so-far.waits" : "so-far.rests", what, day);
  }
}
