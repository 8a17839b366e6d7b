package withers.report.list;

import withers.cases.Reference;
import withers.finding.Finding.Registration;
import withers.finding.OpenQuestion;
import withers.organisation.Organisation;
import withers.report.text.OneLine;
import withers.report.text.Texts;

/** Puts what one reader may be able to tell into words. */
record Questions(Texts texts, Reader reader, Phrases phrases) {

  Question ask(OpenQuestion question) {
    return new Question(
        Reference.of(question.key()),
        phrases.title(question.animalName(), question.species()),
        question.chips(),
        OneLine.of(question.record().value()),
        about(question),
        new Comparisons(texts, reader).of(question.registered()));
  }

  private String about(OpenQuestion question) {
    return texts.say(
        "question.about",
        phrases.opening(question.animalName(), question.species()),
        phrases.who(reader.see(question.keeper())),
        phrases.organisations(
            question.registered().stream().map(Registration::registry).map(this::named).toList()));
  }

  private Organisation named(withers.id.OrganisationId registry) {
    return reader.organisation(registry);
  }
}
