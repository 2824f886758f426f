//! What only people know of a method statement: the law, who is called, how grave a risk is, where waste goes.

use super::table::keys;
use super::{Name, Regime, Who};
use crate::units::Duration;
use crate::yaml::{At, Named, Text};

keys! {
    /// The method statement of the work.
    Statement at "statement." asks Planner {
        /// Its number, where it is not that of the pack.
        number: Text<24>;
        /// The law that the work is done under.
        regime: Regime;
        /// The client's own words for its answer, the best first.
        answers: Vec<At<Text<40>>>;
        /// Who gives first aid.
        first_aid: Name, list = "people", list_optional = true;
        /// Who may change this text or accept what differs from it.
        concession: Name, list = "people", list_optional = true;
        /// The site's limits of wind, lightning, ice and light.
        weather: Text<90>, who = Who::Operator;
        /// What is done with a spill, and where its kit is.
        spill: Text<90>, who = Who::Operator;
        /// Whom to call and where to go.
        emergency: Emergency;
        /// How grave the named hazards are, before and after what holds them.
        risks: Named<Risk>;
        /// What is carried away, and where to.
        wastes: Vec<At<Waste>>;
    }

    /// Whom to call and where to go.
    Emergency at "statement.emergency." asks Operator {
        /// The number or channel that answers day and night.
        call: Text<24>;
        /// What the caller says.
        say: Text<60>;
        /// Where people meet.
        muster: Text<40>;
        /// The hospital that treats injected oil.
        hospital: Text<40>;
        /// How long the way there takes.
        reach: Duration;
        /// Who rescues, with what.
        rescue: Text<90>;
    }

    /// What people say of a hazard, in the words of the client's own table of risks.
    Risk at "statement.risks.*." asks Planner {
        /// Chance and harm with nothing done.
        before: Text<12>;
        /// Chance and harm with everything done.
        after: Text<12>;
        /// Who sees to it.
        owner: Name, list = "people", list_optional = true;
        /// What is done beside what the program says.
        control: Text<120>;
    }

    /// Something that is carried away.
    Waste at "statement.wastes." asks Operator {
        /// What.
        what [required]: Text<60>;
        /// Its code in the list of wastes that holds on site.
        code: Text<16>;
        /// Where it goes.
        to: Text<60>;
    }
}
