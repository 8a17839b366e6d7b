package withers.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.answered.Answers;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.chip.ChipNumber;
import withers.custody.Cast;
import withers.finding.Finding;
import withers.finding.Who;
import withers.history.History;
import withers.history.Statement;
import withers.id.OrganisationId;

/**
 * How clients wish to be reached. An organisation tells it with one animal, and it goes for that
 * client in all follow-ups of this organisation: the client is whom its record of the animal named
 * by the day of the answer.
 */
final class Wishes {

  private record Wish(OrganisationId toldTo, Who client, Channel channel) {}

  private final Answers answers;
  private final PartitionReader reader;
  private final Cast cast;

  Wishes(Answers answers, PartitionReader reader, Cast cast) {
    this.answers = answers;
    this.reader = reader;
    this.cast = cast;
  }

  /** By the follow-ups whose custodian is such a client; of several wishes the last one counts. */
  Map<CaseKey, Channel> about(List<Finding> findings) {
    List<Wish> wishes = wishes();
    Map<CaseKey, Channel> channels = new HashMap<>();
    for (Finding finding : wishes.isEmpty() ? List.<Finding>of() : findings) {
      wishes.stream()
          .filter(wish -> isOf(wish, finding))
          .reduce((one, next) -> next)
          .ifPresent(wish -> channels.put(finding.caseKey(), wish.channel));
    }
    return channels;
  }

  private boolean isOf(Wish wish, Finding finding) {
    return wish.toldTo.equals(finding.actor())
        && finding.custodian().person().isPresent()
        && cast.verdict(wish.client, finding.custodian()).isSamePerson();
  }

  private List<Wish> wishes() {
    List<Answered> told = answers.wishes();
    Set<ChipNumber> chips = new HashSet<>();
    told.forEach(one -> chip(one).ifPresent(chips::add));
    List<History> histories = reader.histories(chips);
    cast.prepare(histories);
    Map<ChipNumber, List<Statement>> byChip = new HashMap<>();
    histories.forEach(history -> byChip.put(history.chip(), history.statements()));
    List<Wish> wishes = new ArrayList<>();
    for (Answered one : told) {
      chip(one)
          .flatMap(chip -> client(one, byChip.getOrDefault(chip, List.of())))
          .ifPresent(who -> wishes.add(new Wish(one.author(), who, one.channel().orElseThrow())));
    }
    return wishes;
  }

  private static Optional<ChipNumber> chip(Answered answer) {
    return answer.key().anchor() instanceof Anchor.Chip chip
        ? Optional.of(chip.number())
        : Optional.empty();
  }

  private Optional<Who> client(Answered answer, List<Statement> statements) {
    return statements.stream()
        .filter(one -> one.key().value().equals(answer.key().recordKey()))
        .filter(one -> cast.organisation(one).equals(answer.author()))
        .filter(one -> !one.day().isAfter(answer.day()))
        .sorted(Statement.BY_DAY)
        .flatMap(this::clients)
        .reduce((one, next) -> next);
  }

  private Stream<Who> clients(Statement statement) {
    return cast.clients(statement).filter(who -> who.person().isPresent());
  }
}
