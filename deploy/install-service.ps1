# Installs the published program as a Windows service, or brings an installed one up to it. Run in an elevated PowerShell. Sites, ledgers and settings are never touched.
#   .\install-service.ps1 -Published C:\build\dailyadjust
#   .\install-service.ps1 -Remove
param(
    [string] $Published,
    [string] $Program = "$env:ProgramFiles\DailyAdjust",
    [string] $HomeFolder = "$env:ProgramData\DailyAdjust",
    [switch] $Remove
)
$ErrorActionPreference = 'Stop'
$name = 'DailyAdjust'
# A virtual account of the service's own: it has no password, and rights only where it is given some.
$account = "NT SERVICE\$name"
$service = Get-Service -Name $name -ErrorAction SilentlyContinue

if ($Remove) {
    if ($service) {
        Stop-Service -Name $name
        & sc.exe delete $name | Out-Null
    }
    Write-Output "Removed. Sites and ledgers are still in $HomeFolder, the program in $Program."
    exit 0
}

if (-not $Published -or -not (Test-Path (Join-Path $Published 'dailyadjust.exe'))) {
    throw "There is no dailyadjust.exe in '$Published'. Build it: dotnet publish src/DailyAdjust.Service -c Release -r win-x64 --self-contained -o FOLDER"
}

# Before anything is changed: a program that does not start here replaces nothing.
$version = & (Join-Path $Published 'dailyadjust.exe') --version
if ($LASTEXITCODE -ne 0) { throw 'The published program does not start on this machine.' }

New-Item -ItemType Directory -Force -Path $HomeFolder | Out-Null
if ($service) {
    # The program that knows these ledgers backs them up, before a newer one changes their tables.
    & (Join-Path $Program 'dailyadjust.exe') backup --home $HomeFolder
    if ($LASTEXITCODE -ne 0) { throw 'The backup failed; nothing was changed.' }
    Stop-Service -Name $name
}

$before = "$Program.before"
if (Test-Path $Program) {
    if (Test-Path $before) { Remove-Item -Recurse -Force $before }
    Move-Item $Program $before
}
Copy-Item -Recurse $Published $Program

if (-not $service) {
    $command = '"{0}" serve --home "{1}"' -f (Join-Path $Program 'dailyadjust.exe'), $HomeFolder
    New-Service -Name $name -BinaryPathName $command -DisplayName 'DailyAdjust' -StartupType Automatic `
        -Description 'Morning advice for stand-alone irrigation controllers' | Out-Null
    & sc.exe config $name obj= $account start= delayed-auto | Out-Null
    # Started again after a failure: after 30 s, and after 30 s more; counted anew each day.
    & sc.exe failure $name reset= 86400 actions= restart/30000/restart/30000/restart/300000 | Out-Null
    & sc.exe failureflag $name 1 | Out-Null
}

# Its own home is the only place that it may write.
& icacls.exe $HomeFolder /grant "${account}:(OI)(CI)M" | Out-Null
Start-Service -Name $name
Write-Output "Installed $version in $Program. Next: dailyadjust new --home `"$HomeFolder`", then dailyadjust doctor --home `"$HomeFolder`""
