# Le bureau : personnes, zones, réglages. Rien d’un enfant n’y est jamais montré.

people-title = Personnes
people-heading = { $active ->
        [one] { $active } personne peut se connecter
       *[other] { $active } personnes peuvent se connecter
    }
people-heading-part = Les personnes du programme
people-add = Ajouter une personne
people-next = Page suivante
people-none = Personne encore.
people-inactive = Ne peut pas se connecter
people-code-open = Un code à usage unique est en cours
people-no-password = Ne s’est jamais connecté
people-role-heading = { $role ->
        [worker] Agents de terrain
        [supervisor] Superviseurs
        [manager] Responsables du programme
       *[administrator] Administrateurs
    }
people-away = Absence jusqu’au { $date }, { $name } remplace
people-inactive-heading = Ne peuvent plus se connecter

person-new-title = Ajouter une personne
person-new-lede = Après l’enregistrement, vous recevez un code à usage unique à remettre. Seule la personne connaît son mot de passe.
person-part-who = Qui
person-full-name = Nom
person-full-name-hint = Comme les collègues le disent.
person-sign-in-name = Nom de connexion
person-sign-in-name-hint = Petites lettres et chiffres, faciles à taper sur un téléphone. Chacun a le sien.
person-phone = Téléphone
person-phone-hint = Les superviseurs appellent ce numéro.
person-language = Langue
person-language-programme = Celle du programme
person-role = Rôle
person-role-worker = Agent de terrain
person-role-worker-hint = Ses enfants, et ceux d’un collègue qu’il remplace.
person-role-supervisor = Superviseur
person-role-supervisor-hint = Les enfants des zones ou des agents cochés plus bas.
person-role-manager = Responsable du programme
person-role-manager-hint = Seulement les chiffres du mois, jamais un enfant.
person-role-administrator = Administrateur
person-role-administrator-hint = Personnes, zones, réglages ; jamais un enfant.
person-start = Premier jour
person-end = Dernier jour
person-end-hint = Laissez vide s’il n’est pas connu. La connexion s’arrête avec ce jour.
person-part-team = Pour un superviseur : les enfants de qui
person-areas = Zones
person-workers = Agents
person-team-hint = Un superviseur voit les enfants de chaque zone ou agent coché. Les autres rôles n’ont rien à cocher ici.
person-no-areas = Aucune zone encore. Ajoutez d’abord des zones.
person-no-workers = Aucun agent de terrain encore.
person-save = Enregistrer
person-saved = Enregistré.

person-signing-in = Connexion
person-state-active = Peut se connecter
person-state-inactive = Ne peut pas se connecter
person-state-code = Un code à usage unique est en cours, valable jusqu’au { $date }
person-state-no-password = Pas encore de mot de passe : remettez un code à usage unique
person-state-locked = Attend après des mots de passe faux, jusqu’au { $date }
person-sessions = { $count ->
        [0] Connecté nulle part
        [one] Connecté sur { $count } téléphone ou navigateur
       *[other] Connecté sur { $count } téléphones ou navigateurs
    }
person-code-do = Faire un code à usage unique
person-code-hint = Pour un mot de passe oublié ou un nouveau téléphone. Il s’affiche une fois, sert une fois et vaut 72 heures. Un code précédent ne vaut plus.
person-sessions-do = Déconnecter partout
person-sessions-hint = Pour un téléphone perdu. Ce qui n’en a pas encore été envoyé sera redemandé.
person-deactivate-do = Retirer la connexion
person-deactivate-hint = Toutes les sessions finissent aussitôt. Ce que la personne a noté reste. Les enfants restent sur sa liste jusqu’à ce qu’un superviseur les confie à un autre.
person-activate-do = Permettre à nouveau la connexion
person-sessions-ended = Déconnecté partout.
person-deactivated = Cette personne ne peut plus se connecter.
person-activated = Cette personne peut à nouveau se connecter.

cover-heading = Absence
cover-lede = Le collègue qui remplace voit les enfants de cet agent entre les deux jours, ces jours compris.
cover-none = Personne ne remplace.
cover-line = { $name }, du { $from } au { $to }
cover-by = Qui remplace
cover-from = Premier jour d’absence
cover-to = Dernier jour d’absence
cover-add = Enregistrer le remplacement
cover-saved = Enregistré : { $name } remplace du { $from } au { $to }.
cover-end = Arrêter
cover-end-of = Arrêter : { $name }, { $from }
cover-ended = Plus personne ne remplace pour ces jours.

code-title = Code à usage unique pour { $name }
code-heading = Remettez ce code à { $name } maintenant
code-lede = Il ne s’affiche qu’ici et maintenant. Il sert une fois, jusqu’au { $date }.
code-way-1 = Lisez-le de vive voix ou au téléphone. Ne l’envoyez pas par message.
code-way-2 = { $name } se connecte avec le nom { $sign-in } et ce code comme mot de passe.
code-way-3 = Ensuite, { $name } choisit son propre mot de passe.
code-say = Nom de connexion
code-code = Code
code-done = Remis
code-gone-title = Ce code a déjà été affiché
code-gone = Le formulaire a été envoyé deux fois. Un code ne s’affiche qu’une fois, et le premier vaut toujours. S’il n’a pas été noté, faites-en un nouveau.

areas-title = Zones
areas-heading = { $count ->
        [0] Aucune zone encore
        [one] { $count } zone en usage
       *[other] { $count } zones en usage
    }
areas-none = Ajoutez la première : les agents inscrivent les enfants dans une zone.
areas-add-heading = Ajouter une zone
areas-add = Ajouter
areas-name = Nom
areas-code = Code
areas-code-hint = Petites lettres, chiffres et traits d’union, comme dans les fichiers exportés. Il reste pour toujours.
areas-parent = Se trouve dans
areas-parent-none = Aucune zone plus grande
areas-parent-hint = Par exemple un village dans un district.
areas-walk = À pied jusqu’à un foyer et retour
areas-walk-hint = En moyenne, depuis l’endroit d’où part l’agent. Les superviseurs voient les heures quand ils répartissent les enfants. Laissez vide si vous ne savez pas.
areas-walk-unit = minutes
areas-active = En usage
areas-active-yes = Oui
areas-active-no = Non, on n’y inscrit plus d’enfants
areas-inactive = Plus en usage
areas-inactive-children = { $count ->
        [one] Hors service, mais un enfant y est encore : changez-le de zone
       *[other] Hors service, mais { $count } enfants y sont encore : changez-les de zone
    }
areas-walk-line = { $minutes ->
        [one] { $minutes } minute à pied
       *[other] { $minutes } minutes à pied
    }
areas-walk-missing = minutes à pied pas encore notées
areas-change = Changer
areas-change-of = Changer { $name }
areas-change-title = Changer { $name }
areas-added = Ajouté : { $name }.
areas-saved = Enregistré : { $name }.
areas-saved-children = { $count ->
        [one] Enregistré : { $name } est hors service. Un enfant y est encore et reste avec son agent ; changez-le de zone.
       *[other] Enregistré : { $name } est hors service. { $count } enfants y sont encore et restent avec leurs agents ; changez-les de zone.
    }
areas-code-fixed = Code { $code } : les fichiers exportés s’y réfèrent, il reste donc.

settings-title = Réglages
settings-heading = Réglages de { $name }
settings-lede = Ils valent pour tous aussitôt.
settings-programme-name = Nom du programme
settings-time-zone = Fuseau horaire
settings-time-zone-hint = Décide quand un jour commence. Un nom de la forme Continent/Ville de la liste IANA, ou UTC.
settings-time-zone-now = Il y est maintenant { $time }.
settings-emergency = Numéro d’urgence
settings-emergency-hint = Affiché là où un enfant est en danger. Vide : les pages disent « votre numéro d’urgence local ».
settings-language = Langue
settings-language-hint = Pour les personnes qui n’en ont pas choisi.
settings-threshold = Retenir les nombres sous
settings-threshold-hint = Dans les rapports et les fichiers exportés, pour que nulle famille ne soit reconnue. On peut l’élever, jamais le mettre sous 5 (pratique courante).
settings-threshold-unit = enfants
settings-save = Enregistrer
settings-saved = Enregistré. Cela vaut dès maintenant.
