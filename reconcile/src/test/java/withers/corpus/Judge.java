package withers.corpus;

import withers.contact.Contact;
import withers.matching.Verdict;

/** Anything that says what two contacts are to each other. */
public interface Judge {
  Verdict verdict(Contact one, Contact other);
}
