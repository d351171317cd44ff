# Words that every page may use: the frame, buttons, dates, units, cautions.


# The frame
common-brand = Spoonround
common-title = { $page } – Spoonround
common-skip = Aller au contenu
common-main-nav = Principal
common-you-nav = Vous
common-nav-round = Tournée
common-nav-find = Chercher
common-nav-add = Inscrire
common-nav-late = En retard
common-nav-workers = Équipe
common-nav-reports = Rapports
common-nav-people = Personnes
common-nav-areas = Zones
common-nav-protocol = Protocole
common-nav-settings = Réglages
common-help = Aide
common-signed-in = Connecté : { $name }, { $role }
common-language-beside = s’ouvre à côté ; ce que vous avez écrit reste ici
common-language = Langue
common-password = Mot de passe
common-sign-out = Se déconnecter
common-sign-in = Se connecter
common-demo = Données inventées. Aucun enfant, aucune famille, aucun lieu n’est réel.
common-as-of = Vous voyez le { $date }, avec les corrections connues aujourd’hui.
common-as-of-leave = Revenir à aujourd’hui
common-as-of-label = Un jour passé
common-demo-label = Démonstration
common-protocol = Protocole { $id }, version { $version }.
common-protocol-local = Protocole local : { $name }.
common-protocol-approved = Approuvé par { $by }.
common-protocol-not-approved = Pas encore approuvé par un clinicien.
common-call-number = Appeler le { $number }
common-call-local = Appelez votre numéro d’urgence local
common-emergency-number = Urgence : { $number }

# Cautions: fixed text. A programme may translate it, not shorten it.
common-caution-line = Spoonround aide à prévoir les visites. Il ne pose pas de diagnostic. Suivez votre protocole local et votre superviseur. Un bébé sur une liste peut aller bien ; un bébé qui n’y est pas peut être malade. Fiez-vous à ce que vous voyez.
common-cautions-all = Toutes les précautions
common-caution-1 = Cette application aide à prévoir les visites. Elle ne pose pas de diagnostic. Suivez votre protocole local et votre superviseur.
common-caution-2 = Si un bébé ne peut ni boire ni téter, vomit tout, convulse, est très endormi ou difficile à réveiller, ou respire mal : référez tout de suite, n’attendez pas l’application.
common-caution-3 = Un bébé sur cette liste peut aller bien ; un bébé qui n’y est pas peut être malade. Fiez-vous à ce que vous voyez.
common-caution-4 = Ne dites jamais à une mère d’arrêter l’allaitement à cause d’un signal. Ne diluez jamais le lait. Ne donnez jamais moins à manger parce qu’un poids est élevé.
common-caution-5 = Bébé né trop tôt : les âges sont corrigés. Demandez avis avant de commencer les aliments.
common-caution-6 = Étouffement : bébé assis droit, restez près de lui, aliments mous, pas de noix entières.
common-caution-7 = Réaction à un aliment : arrêtez cet aliment jusqu’à ce qu’un soignant dise qu’il est sans danger.
common-caution-8 = Ces chiffres viennent de ce qui a été saisi. Si une mesure semble étrange, mesurez de nouveau avant d’inquiéter la famille.
common-caution-rule = Proposé par une règle, ce n’est pas un diagnostic. Référez selon votre jugement même si aucune règle ne le dit. Respectez la famille : demandez d’abord.
common-caution-unsure = Dans le doute, considérez que c’est grave.

# Buttons and answers
common-save = Enregistrer
common-continue = Continuer
common-cancel = Annuler
common-back-to = Retour : { $page }
common-show = Afficher
common-change = Modifier
common-correct = Corriger
common-why = Pourquoi
common-more = Suite
common-print = Imprimer
common-yes = Oui
common-no = Non
common-not-asked = Pas demandé
common-not-done = Pas fait
common-not-known = On ne sait pas
common-none-of-these = Rien de cela
common-did-not-check = Pas vérifié
common-last-time = La dernière fois
common-last-value = { $value }, { $date }
common-day = Jour
common-month = Mois
common-year = Année
common-today = Aujourd’hui
common-yesterday = Hier
common-another-day = Un autre jour
common-choose = Choisir
common-saved = Enregistré.
common-optional = Peut rester vide.

# Faults of a form as a whole
common-not-saved-title = Pas enregistré : { $page }
common-not-saved = Pas encore enregistré : { $count ->
        [one] { $count } point à corriger
       *[other] { $count } points à corriger
    }
common-all-kept = Tout ce que vous avez écrit est encore là.
common-fault-link = { $field } : { $fault }
common-look-again = Regardez de nouveau

# The spoon and the chart
common-spoon-today = Étape sur la cuillère : { $stage }.
common-chart-months = mois
common-chart-numbers = Les mêmes chiffres en tableau
common-chart-age = Âge
common-chart-date = Date
common-chart-value = Valeur
common-chart-not-measured = pas mesuré
common-chart-note = 0 est le milieu des enfants en bonne santé (OMS 2006). Un vide veut dire : pas mesuré. Le temps va de gauche à droite dans toutes les langues.
common-bowls = { $count ->
        [one] { $count } bol
       *[other] { $count } bols
    }
common-bowls-wanted = { $count ->
        [one] { $count } bol
       *[other] { $count } bols
    }, { $more ->
        [one] { $more } de plus si l’enfant veut
       *[other] { $more } de plus si l’enfant veut
    }
common-bowl-share = Un bol plein à { $percent }
common-bowl-texture = Bol de nourriture : { $texture }

# Counts
common-days = { $count ->
        [one] { $count } jour
       *[other] { $count } jours
    }
common-weeks = { $count ->
        [one] { $count } semaine
       *[other] { $count } semaines
    }
common-months = { $count } mois
common-minutes = { $count ->
        [one] { $count } minute
       *[other] { $count } minutes
    }
common-times = { $count } fois
common-children = { $count ->
        [one] { $count } enfant
       *[other] { $count } enfants
    }
common-homes = { $count ->
        [one] { $count } maison
       *[other] { $count } maisons
    }
common-age-and = { $whole } et { $rest }
common-list-and = { $most } et { $last }
common-list-comma = { $most }, { $next }

# Units
common-kg = { $n } kg
common-g = { $n } g
common-cm = { $n } cm
common-mm = { $n } mm
common-percent = { $n } %

# Dates
date-day = { $day ->
        [1] 1er
       *[other] { $day }
    } { $month }
date-full = { $day ->
        [1] 1er
       *[other] { $day }
    } { $month } { $year }
date-weekday = { $weekday } { $day ->
        [1] 1er
       *[other] { $day }
    } { $month }
date-short = { $day } { $month }
date-month-year = { $month } { $year }
date-time = { $date }, { $hour } h { $minute }
month-1 = janvier
month-2 = février
month-3 = mars
month-4 = avril
month-5 = mai
month-6 = juin
month-7 = juillet
month-8 = août
month-9 = septembre
month-10 = octobre
month-11 = novembre
month-12 = décembre
month-short-1 = janv.
month-short-2 = févr.
month-short-3 = mars
month-short-4 = avr.
month-short-5 = mai
month-short-6 = juin
month-short-7 = juil.
month-short-8 = août
month-short-9 = sept.
month-short-10 = oct.
month-short-11 = nov.
month-short-12 = déc.
weekday-1 = lundi
weekday-2 = mardi
weekday-3 = mercredi
weekday-4 = jeudi
weekday-5 = vendredi
weekday-6 = samedi
weekday-7 = dimanche

# Error pages: what happened, and a way out
trouble-not-found-title = Il n’y a rien à cette adresse
trouble-not-found = Le lien est peut-être ancien, ou l’enfant est suivi par quelqu’un d’autre.
trouble-not-allowed-title = Cette page n’est pas pour votre rôle
trouble-not-allowed = Une autre personne du programme s’en occupe. Demandez à votre superviseur si vous en avez besoin.
trouble-old-page-title = Pas encore enregistré : cette page date d’avant votre dernière connexion
trouble-old-page = Tout ce que vous avez écrit est encore là. Vérifiez que c’est bien à enregistrer, puis envoyez de nouveau.
trouble-send-again = Envoyer de nouveau
trouble-foreign-form-title = Rien n’a été enregistré
trouble-foreign-form = Le formulaire ne vient pas d’une page de Spoonround dans ce navigateur. Rouvrez la page et remplissez-la là.
trouble-bad-form-title = Le formulaire est illisible
trouble-bad-form = Rien n’a été enregistré. Revenez en arrière dans le navigateur : ce que vous avez écrit y est encore. Si cela continue, rouvrez la page.
trouble-bad-address-title = Une partie de cette adresse est illisible
trouble-bad-address = Il s’agit de « { $part } ». Un jour s’écrit 2026-11-05 et ne peut pas être dans l’avenir.
trouble-bad-address-month = Il s’agit de « { $part } ». Un mois s’écrit 2026-10.
trouble-bad-address-part = Il s’agit de « { $part } ». Revenez en arrière et choisissez dans les listes de la page.
trouble-too-large-title = Trop de choses envoyées à la fois
trouble-too-large = Rien n’a été enregistré. Revenez en arrière, raccourcissez les notes et enregistrez de nouveau.
trouble-conflict-title = C’est déjà enregistré, et c’est différent
trouble-conflict = Ce formulaire a déjà été envoyé avec un autre contenu. Le premier enregistrement est gardé. Ouvrez-le pour le voir et le corriger.
trouble-conflict-open = Ouvrir ce qui est enregistré
trouble-busy-title = Trop de monde à la fois, réessayez
trouble-busy = Revenez en arrière dans quelques secondes et envoyez de nouveau : rien n’est enregistré deux fois.
trouble-broken-title = Quelque chose s’est cassé de notre côté
trouble-broken = Ce n’est peut-être pas enregistré. Revenez en arrière et envoyez de nouveau : rien n’est enregistré deux fois.
trouble-broken-reference = Si cela continue, donnez ce numéro à votre superviseur :
trouble-go-home = Aller à ma première page
trouble-go-find = Chercher un enfant
