# Corrections du dossier : annuler une visite, la rattacher à un autre enfant, réunir deux dossiers d’un enfant.

# Chemins depuis la page qui corrige une visite
correction-move-way = Ce n’est pas cet enfant ? Rattacher la visite au bon enfant
correction-void-way = Elle n’a pas eu lieu, ou a été saisie deux fois ? L’annuler

# Pourquoi une visite est annulée
void-reason-wrong-child = Saisie pour un autre enfant
void-reason-never-happened = Elle n’a pas eu lieu
void-reason-entered-twice = La même visite a été saisie deux fois
void-reason-other = Autre chose

# Annuler
void-title = Annuler la visite du { $date } : { $name }
void-lede = Elle reste au dossier avec votre raison et ne compte plus. Les règles sont relues à partir de ce jour.
void-what = { $where }, saisie par { $by }
void-reason = Quel genre de raison
void-note = La raison, pour qui la lira ensuite
void-note-hint = Au moins 10 caractères.
void-whose = Si vous savez de quel enfant il s’agit, rattachez-lui plutôt la visite : rien de mesuré ne se perd.
void-move = La rattacher à un autre enfant
void-do = L’annuler
void-done = La visite est annulée. Ce qu’elle seule avait causé est clos.

# Ce qu’une correction changerait
effect-title = Ce qui change pour { $name }
effect-none = Aucun suivi ne change.
effect-closes = Se ferme :
effect-opens = S’ouvre :
effect-changes = Reste ouvert, avec une autre urgence ou une autre date :
effect-line = { $class }, à revoir au plus tard { $day } : { $why }
effect-urgent = Un suivi urgent se fermerait. Si l’enfant est peut-être malade, voyez-le ou appelez avant de continuer.

# Quand quelqu’un a été plus rapide
correction-changed = Quelqu’un a modifié cette visite entre-temps. Regardez ce qui est écrit maintenant, puis envoyez à nouveau.
correction-gone-title = Cette visite n’est plus ici
correction-gone = Quelqu’un l’a annulée ou rattachée à un autre enfant entre-temps. Vous n’avez rien changé.
correction-to-child = À la page de l’enfant

# Historique sur la page de l’enfant
history-title = Corrections de ce dossier
history-void = La visite du { $date } a été annulée : { $reason }.
history-when = { $name }, { $date }.
history-moved-to = La visite du { $date } a été rattachée à
history-moved-to-other = La visite du { $date } a été rattachée à un enfant que vous ne suivez pas.
history-moved-from = La visite du { $date } a été rattachée ici ; elle venait de
history-moved-from-other = La visite du { $date } a été rattachée ici ; elle venait d’un enfant que vous ne suivez pas.
history-merged = Le dossier { $code } de { $name } a été réuni à celui-ci. Son code mène ici.
