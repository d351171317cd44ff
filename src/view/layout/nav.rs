//! The ways to go of each role, within reach of the thumb.

use domain::role::Role;
use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::view::icons::Icon;
use crate::view::layout::Shell;
use crate::view::layout::foot;

/// A way to go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Nav {
    /// The homes of the day.
    Round,
    /// Find a child.
    Find,
    /// Register a child.
    Add,
    /// Late follow-ups of a team.
    Late,
    /// The team.
    Workers,
    /// Monthly reports.
    Reports,
    /// People of the programme.
    People,
    /// Villages.
    Areas,
    /// The feeding protocol.
    Protocol,
    /// Settings.
    Settings,
}

impl Nav {
    /// The ways to go of a role, first the one it starts on.
    #[must_use]
    pub const fn of(role: Role) -> &'static [Nav] {
        match role {
            Role::Worker => &[Self::Round, Self::Find, Self::Add],
            Role::Supervisor => &[Self::Late, Self::Find, Self::Add, Self::Workers, Self::Reports],
            Role::Manager => &[Self::Reports],
            Role::Administrator => &[Self::People, Self::Areas, Self::Protocol, Self::Settings],
        }
    }

    /// Where it leads.
    #[must_use]
    pub const fn path(self) -> &'static str {
        match self {
            Self::Round => "/round",
            Self::Find => "/find",
            Self::Add => "/children/new",
            Self::Late => "/late",
            Self::Workers => "/team",
            Self::Reports => "/reports",
            Self::People => "/people",
            Self::Areas => "/areas",
            Self::Protocol => "/protocol",
            Self::Settings => "/settings",
        }
    }

    /// Its word.
    #[must_use]
    pub fn words(self, w: &Words) -> String {
        w.say(match self {
            Self::Round => "common-nav-round",
            Self::Find => "common-nav-find",
            Self::Add => "common-nav-add",
            Self::Late => "common-nav-late",
            Self::Workers => "common-nav-workers",
            Self::Reports => "common-nav-reports",
            Self::People => "common-nav-people",
            Self::Areas => "common-nav-areas",
            Self::Protocol => "common-nav-protocol",
            Self::Settings => "common-nav-settings",
        })
    }

    const fn icon(self) -> Icon {
        match self {
            Self::Round => Icon::Round,
            Self::Find => Icon::Find,
            Self::Add => Icon::Add,
            Self::Late => Icon::Late,
            Self::Workers | Self::People => Icon::People,
            Self::Reports => Icon::Report,
            Self::Areas => Icon::Area,
            Self::Protocol => Icon::Sheet,
            Self::Settings => Icon::Settings,
        }
    }
}

/// The bar within reach: the ways to go, or in an emergency the call.
pub(super) fn reach(shell: &Shell<'_>) -> Markup {
    let w = shell.w;
    let Some(role) = shell.role.filter(|_| !shell.without_reach) else { return Markup::default() };
    if shell.urgent {
        return html! { nav.reach aria-label=(w.say("common-main-nav")) { (foot::dial(shell)) } };
    }
    html! {
        nav.reach aria-label=(w.say("common-main-nav")) {
            ul {
                @for way in Nav::of(role) {
                    li { a href=(way.path()) aria-current=[(shell.here == Some(*way)).then_some("page")] { (way.icon().draw("")) (way.words(w)) } }
                }
            }
        }
    }
}
